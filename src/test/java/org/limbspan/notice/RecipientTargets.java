package org.limbspan.notice;

import static java.nio.charset.StandardCharsets.UTF_8;

import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.net.UnknownHostException;
import java.net.http.HttpRequest;
import java.util.List;
import java.util.Properties;
import org.limbspan.intake.JsonBody;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Problem;
import org.limbspan.testing.fuzz.ParserTarget;

/**
 * What is sent as recipients of notices. What is taken as an address must be good for what it is
 * used for later: nobody sees an error then.
 */
public final class RecipientTargets {

  private static final String MAIL =
      """
      {"channel": "mail", "address": "moon@example.org", "notices": ["alert-raised", "alert-settled"],
       "quietFrom": "22:30", "quietTo": "07:00", "reminderMinutes": 30, "reminderPlaces": ["low"],
       "silentPasses": 5}""";

  private static final String WEBHOOK =
      """
      {"channel": "webhook", "address": "https://example.org/moon?a=1", "notices": []}""";

  private static final String CHANGE =
      """
      {"notices": ["alert-raised"], "quietFrom": "22:30", "quietTo": "07:00", "paused": true}""";

  private RecipientTargets() {}

  public static List<ParserTarget> all() {
    return List.of(
        new ParserTarget(
            "recipients as JSON",
            8,
            List.of(MAIL.getBytes(UTF_8), WEBHOOK.getBytes(UTF_8)),
            List.of("channel", "webhook", "mail", "notices", "quietFrom", "24:00", "low", "high"),
            input -> RecipientEntry.recipient(JsonBody.single(new ByteArrayInputStream(input))),
            List.of(Problem.class)),
        new ParserTarget(
            "changes of recipients as JSON",
            4,
            List.of(CHANGE.getBytes(UTF_8)),
            List.of("paused", "quietFrom", "quietTo", "silentPasses", "reminderMinutes"),
            input -> RecipientEntry.change(JsonBody.single(new ByteArrayInputStream(input))),
            List.of(Problem.class)),
        ParserTarget.ofText(
            "mail addresses",
            10,
            RecipientTargets::mail,
            List.of(
                "moon@example.org",
                "front.wall+moon@mail.example.org",
                "m@[192.0.2.1]",
                "m@[IPv6:2001:db8::1]",
                "o'moon@example.org"),
            "@",
            ".",
            "\r\nBcc: other@example.org",
            "<",
            "(comment)",
            "xn--"),
        ParserTarget.ofText(
            "webhook addresses",
            10,
            RecipientTargets::webhook,
            List.of(
                "https://example.org/moon?a=1",
                "http://example.org:8080/",
                "https://[2001:db8::1]:443/x%20y",
                "http://192.0.2.1"),
            "http://",
            "https:",
            "[::1",
            "%25eth0",
            "%0d%0a",
            "@",
            "#",
            ":65536",
            "..",
            "-",
            "_"));
  }

  /** As the mail carrier writes it into a letter. */
  private static void mail(String address) throws MessagingException {
    if (!RecipientAddresses.isMail(address)) {
      throw refused(address);
    }
    MimeMessage message = new MimeMessage(Session.getInstance(new Properties()));
    message.setRecipient(Message.RecipientType.TO, new InternetAddress(address, true));
    String[] to = message.getHeader("To");
    if (to.length != 1 || !List.of(address, "<" + address + ">").contains(to[0])) {
      throw new IllegalStateException("a letter goes to " + String.join(", ", to));
    }
  }

  /** As the webhook's carrier asks; a host by name is not looked up here, one by number is. */
  private static void webhook(String text) {
    WebhookAddress address = WebhookAddress.of(text).orElseThrow(() -> refused(text));
    HttpRequest request = HttpRequest.newBuilder(address.uri()).build();
    if (!request.uri().toASCIIString().equals(text)) {
      throw new IllegalStateException("asked for is " + request.uri());
    }
    if (address.uri().getHost().startsWith("[")) {
      try {
        address.isPublic();
      } catch (UnknownHostException unknown) {
        throw refused(text);
      }
    }
  }

  private static Problem refused(String address) {
    return InvalidInput.inBody("address", address, "an address");
  }
}
