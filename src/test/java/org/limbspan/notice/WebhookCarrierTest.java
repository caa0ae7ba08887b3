package org.limbspan.notice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.limbspan.notice.FlakyReceiver.Mood;

class WebhookCarrierTest {

  private static final Instant NOW = Instant.parse("2026-05-10T12:00:00Z");

  @Test
  void looksAtTheAddressDirectlyBeforeItSends() {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      assertThatThrownBy(() -> carrier(false).carry(notice(), recipient(receiver.address()), "s"))
          .isInstanceOf(Undelivered.class)
          .hasMessageContaining("within the house");
      assertThat(receiver.arrivals()).isEmpty();
    }
  }

  @Test
  void followsNoRedirect() {
    try (FlakyReceiver receiver = new FlakyReceiver()) {
      receiver.beInMoods(List.of(Mood.REDIRECTS));
      assertThatThrownBy(() -> carrier(true).carry(notice(), recipient(receiver.address()), "s"))
          .isInstanceOf(Undelivered.class)
          .hasMessage("answered 307; redirects are not followed");
      assertThat(receiver.arrivals()).hasSize(1);
    }
  }

  @Test
  void saysWhyNothingArrived() {
    FlakyReceiver gone = new FlakyReceiver();
    String address = gone.address();
    gone.close();
    assertThatThrownBy(() -> carrier(true).carry(notice(), recipient(address), "s"))
        .isInstanceOf(Undelivered.class)
        .hasMessage("no connection could be made");
    assertThatThrownBy(
            () -> carrier(true).carry(notice(), recipient("http://nowhere.invalid/"), "s"))
        .isInstanceOf(Undelivered.class);
  }

  private static WebhookCarrier carrier(boolean privateAddresses) {
    return new WebhookCarrier(
        new NoticeProperties(null, null, privateAddresses, Duration.ofSeconds(2)),
        Clock.systemUTC());
  }

  private static Notice notice() {
    return new Notice(
        UUID.randomUUID(),
        UUID.randomUUID(),
        NoticeKind.TEST,
        "{}",
        NOW,
        0,
        NOW.plusSeconds(300),
        null);
  }

  private static Recipient recipient(String address) {
    return new Recipient(UUID.randomUUID(), 1, Channel.WEBHOOK, address, Wishes.NONE, false, NOW);
  }
}
