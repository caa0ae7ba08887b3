package org.limbspan.dashboard;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.limbspan.notice.NoticeKind;
import org.limbspan.notice.NoticeStand;
import org.limbspan.notice.Place;
import org.limbspan.notice.QuietTime;
import org.limbspan.notice.Recipient;
import org.limbspan.notice.RecipientStand;
import org.limbspan.notice.Wishes;

/** Puts the recipients of a rig, and what became of their notices, into words. */
final class NoticeSheets {

  private final RigTime time;

  private NoticeSheets(RigTime time) {
    this.time = time;
  }

  static NoticeSheet of(List<RecipientStand> stands, boolean mail, RigTime time) {
    NoticeSheets sheets = new NoticeSheets(time);
    return new NoticeSheet(mail, stands.stream().map(sheets::line).toList(), choices());
  }

  private static List<NoticeSheet.Choice> choices() {
    return NoticeKind.toChoose().values().stream()
        .map(kind -> new NoticeSheet.Choice(kind.label(), kind.words()))
        .toList();
  }

  private NoticeSheet.Line line(RecipientStand stand) {
    Recipient recipient = stand.recipient();
    return new NoticeSheet.Line(
        recipient.id().toString(),
        recipient.address(),
        recipient.channel().label() + (recipient.paused() ? ", paused" : ""),
        told(recipient.wishes()),
        sentences(stand),
        stand.failing(),
        recipient.paused(),
        NoticeForm.of(recipient.wishes()));
  }

  private static String told(Wishes wishes) {
    String when =
        wishes.notices().stream().map(NoticeKind::words).collect(Collectors.joining("; when "));
    QuietTime quiet = wishes.quiet();
    return (when.isEmpty() ? "Told of nothing yet." : "Told when " + when + ".")
        + (quiet == null ? "" : " Nothing is sent from " + quiet.from() + " to " + quiet.to() + ".")
        + (wishes.notices().contains(NoticeKind.WINDOW_REMINDER)
            ? " Reminders come %d minutes before %s windows."
                .formatted(
                    wishes.reminder().minutesBefore(),
                    wishes.reminder().places().stream()
                        .map(Place::label)
                        .collect(Collectors.joining(" and ")))
            : "")
        + (wishes.notices().contains(NoticeKind.RIG_SILENT)
            ? " Silence is told after " + passes(wishes.silentPasses()) + "."
            : "");
  }

  private static String passes(int count) {
    return count == 1 ? "1 pass" : count + " passes";
  }

  private List<String> sentences(RecipientStand stand) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        stand
            .delivered()
            .map(last -> "Delivered last: " + named(last) + ", " + at(last.deliveredAt()) + ".")
            .orElse("Nothing was delivered yet."));
    stand.waiting().ifPresent(next -> sentences.add(waiting(stand.waitingCount(), next)));
    stand.givenUp().ifPresent(lost -> sentences.add(givenUp(stand.givenUpCount(), lost)));
    return sentences;
  }

  private String waiting(long count, NoticeStand next) {
    String head =
        Typeset.count(count, "notice")
            + (count == 1 ? " waits: " : " wait, the next: ")
            + named(next);
    return next.attempts() == 0
        ? head + ", due " + at(next.nextTryAt()) + "."
        : "%s. It failed %s, the last time because: %s. Next try: %s."
            .formatted(
                head, times(next.attempts()), sentence(next.lastError()), at(next.nextTryAt()));
  }

  private String givenUp(long count, NoticeStand lost) {
    return "%s given up, the last %s, %s, because: %s."
        .formatted(
            Typeset.count(count, "notice") + (count == 1 ? " was" : " were"),
            named(lost),
            at(lost.givenUpAt()),
            sentence(lost.lastError()));
  }

  /** What became of a test. */
  String tested(NoticeStand test) {
    return test.deliveredAt() == null
        ? "The test failed: " + sentence(test.lastError()) + "."
        : "The test was delivered, " + at(test.deliveredAt()) + ".";
  }

  static NoticeSheets in(RigTime time) {
    return new NoticeSheets(time);
  }

  private static String named(NoticeStand notice) {
    return "\u201c" + notice.subject() + "\u201d";
  }

  private static String times(int attempts) {
    return attempts == 1 ? "once" : String.format(Locale.ROOT, "%d times", attempts);
  }

  private static String sentence(@Nullable String reason) {
    return reason == null ? "no reason is known" : reason.replaceAll("\\.+$", "");
  }

  private String at(@Nullable Instant at) {
    return at == null ? "at a time that is not known" : time.minute(at);
  }
}
