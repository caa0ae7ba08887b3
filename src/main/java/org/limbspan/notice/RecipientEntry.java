package org.limbspan.notice;

import java.time.LocalTime;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Entry;
import org.limbspan.intake.Range;

/** Reads recipients that a client sent. */
final class RecipientEntry {

  private static final Set<String> FIELDS =
      new LinkedHashSet<>(
          List.of(
              "channel",
              "address",
              "notices",
              "quietFrom",
              "quietTo",
              "reminderMinutes",
              "reminderPlaces",
              "silentPasses"));
  private static final Set<String> CHANGES =
      new LinkedHashSet<>(
          List.of(
              "notices",
              "quietFrom",
              "quietTo",
              "reminderMinutes",
              "reminderPlaces",
              "silentPasses",
              "paused"));
  private static final Pattern CLOCK = Pattern.compile("([01]\\d|2[0-3]):[0-5]\\d");
  private static final String EXPECTED_CLOCK = "a local time of the rig, such as 22:30";
  private static final int LONGEST_ADDRESS = 2000;

  private RecipientEntry() {}

  static NewRecipient recipient(Entry entry) {
    entry.refuseBeside(FIELDS);
    Optional<Channel> channel = entry.choice("channel", Channel.byLabel());
    Optional<String> address = entry.text("address", LONGEST_ADDRESS);
    Wishes wishes = wishes(entry);
    entry.requireSound();
    return new NewRecipient(channel.orElseThrow(), address.orElseThrow(), wishes);
  }

  /** What a recipient is told from now on. */
  record Change(Wishes wishes, boolean paused) {}

  static Change change(Entry entry) {
    entry.refuseBeside(CHANGES);
    Change change = new Change(wishes(entry), entry.flag("paused"));
    entry.requireSound();
    return change;
  }

  private static Wishes wishes(Entry entry) {
    List<NoticeKind> notices = entry.choices("notices", NoticeKind.toChoose());
    return new Wishes(notices, quiet(entry), reminder(entry), silentPasses(entry));
  }

  private static Reminder reminder(Entry entry) {
    int minutes =
        entry
            .optionalWhole(
                "reminderMinutes", Range.between(Reminder.FEWEST_MINUTES, Reminder.MOST_MINUTES))
            .orElse(Reminder.USUAL.minutesBefore());
    List<Place> places = entry.choices("reminderPlaces", Place.byLabel());
    return new Reminder(minutes, places.isEmpty() ? Reminder.USUAL.places() : places);
  }

  private static int silentPasses(Entry entry) {
    return entry
        .optionalWhole("silentPasses", Range.between(1, Wishes.MOST_SILENT_PASSES))
        .orElse(Wishes.USUAL_SILENT_PASSES);
  }

  private static @Nullable QuietTime quiet(Entry entry) {
    if (!entry.has("quietFrom") && !entry.has("quietTo")) {
      return null;
    }
    Optional<LocalTime> from = clock(entry, "quietFrom");
    Optional<LocalTime> to = clock(entry, "quietTo");
    if (from.isEmpty() || to.isEmpty()) {
      return null;
    }
    if (from.equals(to)) {
      entry.refuse("quietTo", "another time than quietFrom; neither is sent for no quiet time");
      return null;
    }
    return new QuietTime(from.get(), to.get());
  }

  private static Optional<LocalTime> clock(Entry entry, String name) {
    return entry
        .word(name, text -> CLOCK.matcher(text).matches(), EXPECTED_CLOCK)
        .map(LocalTime::parse);
  }
}
