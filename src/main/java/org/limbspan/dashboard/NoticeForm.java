package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.notice.Channel;
import org.limbspan.notice.NewRecipient;
import org.limbspan.notice.NoticeKind;
import org.limbspan.notice.QuietTime;
import org.limbspan.notice.Wishes;

/**
 * The form of a recipient of notices, as it was filled in.
 *
 * @param notices labels of the kinds that are wanted
 */
record NoticeForm(
    @Nullable String channel,
    @Nullable String address,
    @Nullable List<String> notices,
    @Nullable String quietFrom,
    @Nullable String quietTo) {

  static final NoticeForm EMPTY = new NoticeForm(null, null, null, null, null);

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
        quiet == null ? null : quiet.to().toString());
  }

  public boolean wants(String label) {
    return notices != null && notices.contains(label);
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
        time(quietFrom).map(from -> new QuietTime(from, time(quietTo).orElseThrow())).orElse(null));
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
