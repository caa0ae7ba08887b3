package org.limbspan.notice;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.Address;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.MimeMessage;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.MovableClock;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/**
 * The service with a mail server (GreenMail, a real one for SMTP), webhooks allowed on the loopback
 * interface, and a clock that can be moved.
 */
@LimbspanIT
@Import(MovableClock.Setting.class)
@TestPropertySource(
    properties = {
      "limbspan.notices.from=limbspan@garden.example",
      "limbspan.notices.pages=https://moon.example.org/",
      "limbspan.notices.private-addresses=true",
      "limbspan.notices.timeout=4s"
    })
public abstract class NoticeSetting {

  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final GreenMail MAIL =
      new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));

  static {
    MAIL.start();
  }

  @Autowired protected RestTestClient http;
  @Autowired protected MovableClock clock;

  @DynamicPropertySource
  static void mail(DynamicPropertyRegistry registry) {
    registry.add("spring.mail.host", () -> "127.0.0.1");
    registry.add("spring.mail.port", () -> MAIL.getSmtp().getPort());
  }

  @AfterEach
  void putTheClockBack() {
    clock.backToNow();
  }

  /** What arrived in a mailbox, oldest first. */
  protected static List<MimeMessage> mailbox(String address) {
    return Arrays.stream(MAIL.getReceivedMessages())
        .filter(message -> isTo(message, address))
        .toList();
  }

  protected static String subject(MimeMessage message) {
    try {
      return message.getSubject();
    } catch (MessagingException e) {
      throw new AssertionError(e);
    }
  }

  private static boolean isTo(MimeMessage message, String address) {
    try {
      Address[] to = message.getAllRecipients();
      return to != null && Arrays.stream(to).anyMatch(each -> each.toString().equals(address));
    } catch (MessagingException e) {
      throw new AssertionError(e);
    }
  }

  /** Enters a recipient that was there long before every reading. */
  protected JsonNode enter(RigClient rig, String recipient) {
    clock.moveTo(Instant.parse("2000-01-01T00:00:00Z"));
    var answer = rig.postJson("/notice-recipients", recipient);
    clock.backToNow();
    if (answer.status() != 201) {
      throw new AssertionError("not entered: " + answer);
    }
    return answer.body();
  }

  protected static void await(String what, BooleanSupplier condition) {
    Instant deadline = Instant.now().plus(PATIENCE);
    while (!condition.getAsBoolean()) {
      if (Instant.now().isAfter(deadline)) {
        throw new AssertionError("not within " + PATIENCE + ": " + what);
      }
      try {
        Thread.sleep(50);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new AssertionError(e);
      }
    }
  }
}
