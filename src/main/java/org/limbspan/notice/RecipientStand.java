package org.limbspan.notice;

import java.util.Optional;

/**
 * A recipient and what became of its notices.
 *
 * @param delivered the one delivered last
 * @param waiting the next one that waits
 * @param givenUp the one given up last
 */
public record RecipientStand(
    Recipient recipient,
    Optional<NoticeStand> delivered,
    long waitingCount,
    Optional<NoticeStand> waiting,
    long givenUpCount,
    Optional<NoticeStand> givenUp) {

  /** Whether the latest attempt failed. */
  public boolean failing() {
    return waiting.filter(notice -> notice.attempts() > 0).isPresent()
        || givenUp.filter(this::isLatest).isPresent();
  }

  private boolean isLatest(NoticeStand lost) {
    return delivered
        .map(NoticeStand::deliveredAt)
        .filter(at -> lost.givenUpAt() == null || at.isAfter(lost.givenUpAt()))
        .isEmpty();
  }
}
