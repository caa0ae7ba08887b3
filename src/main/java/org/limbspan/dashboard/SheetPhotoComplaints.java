package org.limbspan.dashboard;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.limbspan.photo.IncomingPhoto;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.Problem;
import org.limbspan.platform.Violation;

/** Says which photographs of the sheet stand in the way, where all or none are entered, and why. */
final class SheetPhotoComplaints {

  static final String FILES = "photo";
  static final String TAKEN_AT = "sheetTakenAt";
  static final String CHOOSE_AGAIN =
      "Choose the files again: a browser does not keep them in a form that comes back.";

  private final List<IncomingPhoto> files;
  private final RigTime time;
  private final Predicate<Violation> isOfTypedTime;

  /**
   * Of photographs of one form.
   *
   * @param typed the time that its files were to have where they tell none
   */
  SheetPhotoComplaints(List<IncomingPhoto> files, RigTime time, Optional<Instant> typed) {
    this.files = files;
    this.time = time;
    this.isOfTypedTime =
        violation -> typed.isPresent() && typed.get().toString().equals(violation.value());
  }

  /** What to say of a refusal, by the name of the field. */
  Map<String, String> of(Problem refused) {
    return refused instanceof Conflict
        ? ofTimes(refused.violations())
        : Map.of(FILES, ofUnits(refused.violations()) + " " + CHOOSE_AGAIN);
  }

  /** Each has the instant of another calibration. */
  private Map<String, String> ofTimes(List<Violation> violations) {
    List<Violation> ofFiles = violations.stream().filter(isOfTypedTime.negate()).toList();
    List<Violation> ofTyped = violations.stream().filter(isOfTypedTime).toList();
    Map<String, String> complaints = new LinkedHashMap<>();
    complaints.put(FILES, CHOOSE_AGAIN);
    if (!ofFiles.isEmpty()) {
      complaints.put(
          FILES,
          named(ofFiles)
              + ": another calibration has the very instant at which it was taken, one that is held"
              + " or one of these. Take that one back first, or leave this photograph out. "
              + CHOOSE_AGAIN);
    }
    if (!ofTyped.isEmpty()) {
      complaints.put(
          TAKEN_AT,
          named(ofTyped)
              + ": another calibration has this very time, one that is held or one of these."
              + " Expected a time of its own: photographs whose files tell none are sent one by"
              + " one.");
    }
    return complaints;
  }

  /** Each is measured in another unit than its setup. */
  private String ofUnits(List<Violation> violations) {
    Map<String, List<Violation>> byExpected =
        violations.stream()
            .collect(
                Collectors.groupingBy(
                    Violation::wordsOfPages, LinkedHashMap::new, Collectors.toList()));
    return byExpected.entrySet().stream()
        .map(
            each ->
                each.getValue().stream().map(this::name).collect(Collectors.joining(", "))
                    + ": measured in pixels; expected "
                    + each.getKey()
                    + ".")
        .collect(Collectors.joining(" "));
  }

  private String named(List<Violation> violations) {
    return violations.stream()
        .map(each -> name(each) + taken(each))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private String name(Violation violation) {
    return files.get(violation.line() == null ? 0 : violation.line() - 1).name();
  }

  private String taken(Violation violation) {
    return violation.value() == null
        ? ""
        : " (" + time.second(Instant.parse(violation.value())) + ")";
  }
}
