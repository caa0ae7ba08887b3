package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import org.limbspan.notice.Channel;
import org.limbspan.notice.NewRecipient;
import org.limbspan.notice.NoticeKind;
import org.limbspan.notice.Place;
import org.limbspan.notice.QuietTime;
import org.limbspan.notice.Reminder;
import org.limbspan.notice.Wishes;

/**
 * The form of a recipient of notices, as it was filled in.
 *
 * @param notices labels of the kinds that are wanted
 * @param reminderPlaces {@code low}, {@code high}
 */
record NoticeForm(
    @Nullable String channel,
    @Nullable String address,
    @Nullable List<String> notices,
    @Nullable String quietFrom,
    @Nullable String quietTo,
    @Nullable String reminderMinutes,
    @Nullable List<String> reminderPlaces,
    @Nullable String silentPasses) {

  static final NoticeForm EMPTY = of(Wishes.NONE);

  private static final String TIME = "Expected a time such as 22:30, or nothing in both fields.";
  private static final int LONGEST_ADDRESS = 2000;

  /** The form with what is wished now. */
  static NoticeForm of(Wishes wishes) {
    QuietTime quiet = wishes.quiet();
    return new NoticeForm(
        null,
        null,
        wishes.notices().stream().map(NoticeKind::label).toList(),
        quiet == null ? null : quiet.from().toString(),
        quiet == null ? null : quiet.to().toString(),
        Integer.toString(wishes.reminder().minutesBefore()),
        wishes.reminder().places().stream().map(Place::label).toList(),
        Integer.toString(wishes.silentPasses()));
  }

  public boolean wants(String label) {
    return notices != null && notices.contains(label);
  }

  public boolean remindsOf(String label) {
    return reminderPlaces != null && reminderPlaces.contains(label);
  }

  /** What is wrong with a new recipient, by the name of the field; empty if nothing is. */
  Map<String, String> complaints() {
    Map<String, String> complaints = new LinkedHashMap<>();
    if (chosen().isEmpty()) {
      complaints.put("channel", "One of the two is needed.");
    }
    if (text(address).isEmpty() || text(address).length() > LONGEST_ADDRESS) {
      complaints.put("address", "An address is needed, of at most 2000 characters.");
    }
    complaints.putAll(complaintsOfWishes());
    return complaints;
  }

  /** What is wrong with the wishes alone. */
  Map<String, String> complaintsOfWishes() {
    Map<String, String> complaints = new LinkedHashMap<>();
    if (!NoticeKind.toChoose().keySet().containsAll(chosenNotices())) {
      complaints.put("notices", "Expected some of the choices.");
    }
    boolean none = text(quietFrom).isEmpty() && text(quietTo).isEmpty();
    Optional<LocalTime> from = time(quietFrom);
    Optional<LocalTime> to = time(quietTo);
    if (!none && from.isEmpty()) {
      complaints.put("quietFrom", TIME);
    }
    if (!none && to.isEmpty()) {
      complaints.put("quietTo", TIME);
    }
    if (from.isPresent() && from.equals(to)) {
      complaints.put("quietTo", "Expected another time than that of the beginning.");
    }
    if (minutes().isEmpty()) {
      complaints.put(
          "reminderMinutes",
          "Expected %d to %d minutes.".formatted(Reminder.FEWEST_MINUTES, Reminder.MOST_MINUTES));
    }
    if (places().isEmpty()) {
      complaints.put("reminderPlaces", "Expected low, high or both.");
    }
    if (passes().isEmpty()) {
      complaints.put(
          "silentPasses", "Expected 1 to %d passes.".formatted(Wishes.MOST_SILENT_PASSES));
    }
    return complaints;
  }

  /** The recipient of a form without complaints. */
  NewRecipient recipient() {
    return new NewRecipient(chosen().orElseThrow(), text(address), wishes());
  }

  /** The wishes of a form without complaints. */
  Wishes wishes() {
    Map<String, NoticeKind> kinds = NoticeKind.toChoose();
    return new Wishes(
        chosenNotices().stream().distinct().map(kinds::get).map(Objects::requireNonNull).toList(),
        time(quietFrom).map(from -> new QuietTime(from, time(quietTo).orElseThrow())).orElse(null),
        new Reminder(minutes().orElseThrow(), places()),
        passes().orElseThrow());
  }

  private OptionalInt minutes() {
    return whole(reminderMinutes, Reminder.FEWEST_MINUTES, Reminder.MOST_MINUTES);
  }

  private OptionalInt passes() {
    return whole(silentPasses, 1, Wishes.MOST_SILENT_PASSES);
  }

  /** Those that are known, each once. */
  private List<Place> places() {
    return Arrays.stream(Place.values()).filter(place -> remindsOf(place.label())).toList();
  }

  private static OptionalInt whole(@Nullable String typed, int least, int most) {
    OptionalDouble number = TypedNumber.of(text(typed));
    return number.isPresent()
            && number.getAsDouble() == Math.rint(number.getAsDouble())
            && number.getAsDouble() >= least
            && number.getAsDouble() <= most
        ? OptionalInt.of((int) number.getAsDouble())
        : OptionalInt.empty();
  }

  private List<String> chosenNotices() {
    return notices == null ? List.of() : notices;
  }

  private Optional<Channel> chosen() {
    return Optional.ofNullable(Channel.byLabel().get(text(channel)));
  }

  private static Optional<LocalTime> time(@Nullable String typed) {
    try {
      String text = text(typed);
      return text.isEmpty() ? Optional.empty() : Optional.of(LocalTime.parse(text));
    } catch (DateTimeParseException notATime) {
      return Optional.empty();
    }
  }
}
