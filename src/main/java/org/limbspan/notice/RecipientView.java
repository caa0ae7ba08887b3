package org.limbspan.notice;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A recipient as the API tells it.
 *
 * @param quietFrom local time of the rig
 * @param reminderMinutes before a window begins
 * @param reminderPlaces {@code low} and {@code high}
 * @param silentPasses without a reading, before that is told
 * @param failing whether the latest attempt failed
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RecipientView(
    UUID id,
    String channel,
    String address,
    List<String> notices,
    @Nullable LocalTime quietFrom,
    @Nullable LocalTime quietTo,
    int reminderMinutes,
    List<String> reminderPlaces,
    int silentPasses,
    boolean paused,
    Instant createdAt,
    boolean failing,
    @Nullable NoticeStand delivered,
    long waitingCount,
    @Nullable NoticeStand waiting,
    long givenUpCount,
    @Nullable NoticeStand givenUp) {

  static RecipientView of(RecipientStand stand) {
    Recipient recipient = stand.recipient();
    QuietTime quiet = recipient.wishes().quiet();
    return new RecipientView(
        recipient.id(),
        recipient.channel().label(),
        recipient.address(),
        recipient.wishes().notices().stream().map(NoticeKind::label).toList(),
        quiet == null ? null : quiet.from(),
        quiet == null ? null : quiet.to(),
        recipient.wishes().reminder().minutesBefore(),
        recipient.wishes().reminder().places().stream().map(Place::label).toList(),
        recipient.wishes().silentPasses(),
        recipient.paused(),
        recipient.createdAt(),
        stand.failing(),
        stand.delivered().orElse(null),
        stand.waitingCount(),
        stand.waiting().orElse(null),
        stand.givenUpCount(),
        stand.givenUp().orElse(null));
  }
}
