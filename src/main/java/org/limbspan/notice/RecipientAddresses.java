package org.limbspan.notice;

import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;
import java.net.UnknownHostException;
import java.util.Optional;
import java.util.regex.Pattern;
import org.limbspan.platform.InvalidInput;
import org.springframework.stereotype.Component;

/** Looks at the addresses of recipients before they are entered. */
@Component
class RecipientAddresses {

  private static final String EXPECTED_MAIL =
      "one mail address, such as moon@example.org, without a name beside it";

  /** RFC 5321, 4.5.3.1.3: a path has 256 octets with its brackets. */
  private static final int LONGEST_MAIL = 254;

  /**
   * Before the at sign anything but what parts addresses; after it a name or, in brackets, a
   * number.
   */
  private static final Pattern MAIL =
      Pattern.compile(
          "[^\\s\\p{Cntrl}<>()\\[\\],;:\"\\\\@]+"
              + "@([\\p{L}\\p{M}\\p{N}.-]*[\\p{L}\\p{M}\\p{N}]"
              + "|\\[[0-9]{1,3}(\\.[0-9]{1,3}){3}]|\\[IPv6:[0-9a-fA-F:.]+])");

  private final MailCarrier mail;
  private final NoticeProperties properties;

  RecipientAddresses(MailCarrier mail, NoticeProperties properties) {
    this.mail = mail;
    this.properties = properties;
  }

  /**
   * Looks at one.
   *
   * @throws InvalidInput if nothing can be sent to it
   */
  void require(Channel channel, String address) {
    if (channel == Channel.WEBHOOK) {
      requireWebhook(address);
      return;
    }
    if (!mail.isSetUp()) {
      throw InvalidInput.inBody("channel", channel.label(), "webhook; " + MailCarrier.NOT_SET_UP);
    }
    if (!isMail(address)) {
      throw InvalidInput.inBody("address", address, EXPECTED_MAIL);
    }
  }

  private void requireWebhook(String address) {
    Optional<WebhookAddress> url = WebhookAddress.of(address);
    if (url.isEmpty()) {
      throw InvalidInput.inBody("address", address, WebhookAddress.EXPECTED);
    }
    if (!properties.privateAddresses() && !isPublic(url.get())) {
      throw InvalidInput.inBody("address", address, WebhookAddress.EXPECTED_PUBLIC);
    }
  }

  private static boolean isPublic(WebhookAddress url) {
    try {
      return url.isPublic();
    } catch (UnknownHostException unknown) {
      throw InvalidInput.inBody(
          "address", url.uri(), "a host whose address can be looked up just now");
    }
  }

  /** Whether mail can be sent to that text: one address, nothing beside it. */
  static boolean isMail(String address) {
    try {
      new InternetAddress(address, true).validate();
    } catch (AddressException e) {
      return false;
    }
    return address.length() <= LONGEST_MAIL && MAIL.matcher(address).matches();
  }
}
