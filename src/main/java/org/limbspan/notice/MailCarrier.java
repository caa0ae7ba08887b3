package org.limbspan.notice;

import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Date;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.mail.MailException;
import org.springframework.mail.MailSendException;
import org.springframework.mail.javamail.JavaMailSender;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * Sends mail in plain text (RFC 5322). Its Message-ID is made of the notice's id, so that of one
 * that comes twice a mailbox may show one.
 */
@Component
class MailCarrier implements Carrier {

  static final String NOT_SET_UP =
      "mail is not set up: spring.mail.host and limbspan.notices.from are needed";

  private final ObjectProvider<JavaMailSender> sender;
  private final NoticeProperties properties;
  private final JsonMapper json;
  private final Clock clock;

  MailCarrier(
      ObjectProvider<JavaMailSender> sender,
      NoticeProperties properties,
      JsonMapper json,
      Clock clock) {
    this.sender = sender;
    this.properties = properties;
    this.json = json;
    this.clock = clock;
  }

  @Override
  public Channel channel() {
    return Channel.MAIL;
  }

  /** Whether there is a server to hand mail to, and a sender. */
  boolean isSetUp() {
    return mailer().isPresent() && properties.from() != null;
  }

  @Override
  public void carry(Notice notice, Recipient recipient, String secret) throws Undelivered {
    String from = properties.from();
    Optional<JavaMailSender> mailer = mailer();
    if (mailer.isEmpty() || from == null) {
      throw new Undelivered(NOT_SET_UP);
    }
    try {
      MimeMessage message = mailer.get().createMimeMessage();
      write(message, notice, from, recipient.address());
      mailer.get().send(message);
    } catch (MessagingException | MailException failed) {
      throw new Undelivered("the mail server did not take it: " + reason(failed), failed);
    }
  }

  private Optional<JavaMailSender> mailer() {
    return Optional.ofNullable(sender.getIfAvailable());
  }

  private void write(MimeMessage message, Notice notice, String from, String to)
      throws MessagingException {
    NoticeDocument document = json.readValue(notice.document(), NoticeDocument.class);
    InternetAddress sentBy = new InternetAddress(from, true);
    message.setFrom(sentBy);
    message.setRecipient(Message.RecipientType.TO, new InternetAddress(to, true));
    message.setSubject(OneLine.of(document.subject()), StandardCharsets.UTF_8.name());
    message.setSentDate(Date.from(clock.instant()));
    message.setText(text(document), StandardCharsets.UTF_8.name());
    message.setHeader("Message-ID", "<" + notice.id() + "@" + domain(sentBy) + ">");
    message.setHeader("Limbspan-Notice", notice.id().toString());
    message.setHeader("Auto-Submitted", "auto-generated"); // RFC 3834
  }

  private static String text(NoticeDocument document) {
    String page = document.page();
    return page == null ? document.text() : document.text() + "\n" + page + "\n";
  }

  private static String domain(InternetAddress from) {
    String address = from.getAddress();
    return address.substring(address.lastIndexOf('@') + 1);
  }

  /** The innermost of what went wrong: what the server said, where it said something. */
  private static String reason(Exception failed) {
    Throwable reason = failed;
    for (Throwable next = reason; next != null; next = inner(next)) {
      reason = next;
    }
    return reason.getMessage() == null ? reason.getClass().getSimpleName() : reason.getMessage();
  }

  private static @org.jspecify.annotations.Nullable Throwable inner(Throwable failed) {
    if (failed instanceof MailSendException unsent && unsent.getMessageExceptions().length > 0) {
      return unsent.getMessageExceptions()[0];
    }
    if (failed instanceof MessagingException nested && nested.getNextException() != null) {
      return nested.getNextException();
    }
    return failed.getCause();
  }
}
