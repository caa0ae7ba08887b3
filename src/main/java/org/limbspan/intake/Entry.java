package org.limbspan.intake;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;

/**
 * One object or line that a client sent: gives its fields out as checked values and gathers what is
 * wrong with them. An empty answer means that the field was absent or is among the violations.
 */
public final class Entry {

  private final @Nullable Integer line;
  private final Notation notation;
  private final Map<String, Object> values;
  private final List<Violation> violations = new ArrayList<>();

  /**
   * @param line line of the file or place in the list from 1; null for a single object
   * @param values by inner name, without the absent ones: texts from CSV; from JSON texts, {@link
   *     Double}, {@link Boolean}, {@link List}, or what no field takes
   */
  Entry(@Nullable Integer line, Notation notation, Map<String, Object> values) {
    this.line = line;
    this.notation = notation;
    this.values = values;
  }

  /** Line of the file or place in the list, from 1; null for a single object. */
  public @Nullable Integer line() {
    return line;
  }

  /** Whether something was sent for the field. */
  public boolean has(String name) {
    return values.containsKey(name);
  }

  /** The name of a field as this client writes it. */
  public String written(String name) {
    return notation.written(name);
  }

  public List<Violation> violations() {
    return List.copyOf(violations);
  }

  /** Whether this is a line of a CSV file, not a JSON object. */
  public boolean isLineOfCsv() {
    return notation != Notation.JSON;
  }

  public boolean isSound() {
    return violations.isEmpty();
  }

  /**
   * Ends the reading of a single object.
   *
   * @throws InvalidInput if anything was wrong with it
   */
  public void requireSound() {
    if (!isSound()) {
      throw InvalidInput.inBody(violations);
    }
  }

  /** Notes that a field cannot be taken as it is. */
  public void refuse(String name, String expected) {
    refuse(name, values.get(name), expected);
  }

  void refuse(String name, @Nullable Object value, String expected) {
    Violation violation = new Violation(notation.written(name), value, expected);
    violations.add(line == null ? violation : violation.atLine(line));
  }

  public Optional<Instant> instant(String name) {
    return required(name, Instants.EXPECTED, this::optionalInstant);
  }

  public Optional<Instant> optionalInstant(String name) {
    Object value = values.get(name);
    if (!(value instanceof String text)) {
      return refuseUnlessAbsent(name, value, Instants.EXPECTED);
    }
    try {
      return Optional.of(Instants.parse(text));
    } catch (DateTimeException notAnInstant) {
      refuse(name, Instants.expectedInPlaceOf(text));
      return Optional.empty();
    }
  }

  /** An instant that is at most a day ahead of {@code now}: clocks err, but not by more. */
  public Optional<Instant> instantUpTo(String name, Instant now) {
    Optional<Instant> instant = instant(name);
    Instant latest = now.plus(1, ChronoUnit.DAYS);
    if (instant.isPresent() && instant.get().isAfter(latest)) {
      refuse(name, "an instant at most a day ahead of now, " + now.truncatedTo(ChronoUnit.SECONDS));
      return Optional.empty();
    }
    return instant;
  }

  public OptionalDouble number(String name, Range range) {
    requirePresent(name, "a number " + range.words());
    return optionalNumber(name, range);
  }

  public OptionalDouble optionalNumber(String name, Range range) {
    Object value = values.get(name);
    if (value == null) {
      return OptionalDouble.empty();
    }
    OptionalDouble number = notation.number(value);
    if (number.isPresent() && range.holds(number.getAsDouble())) {
      return number;
    }
    refuse(name, "a number " + range.words());
    return OptionalDouble.empty();
  }

  /**
   * A standard uncertainty: in {@code range} and below the value it belongs to.
   *
   * @param of the value, empty if it is among the violations
   */
  public OptionalDouble uncertainty(String name, Range range, OptionalDouble of) {
    OptionalDouble uncertainty = number(name, range);
    if (uncertainty.isPresent()
        && of.isPresent()
        && uncertainty.getAsDouble() >= of.getAsDouble()) {
      refuse(name, "a number " + range.words() + ", and below the value, " + of.getAsDouble());
      return OptionalDouble.empty();
    }
    return uncertainty;
  }

  public OptionalInt optionalWhole(String name, Range range) {
    Object value = values.get(name);
    if (value == null) {
      return OptionalInt.empty();
    }
    double number = notation.number(value).orElse(Double.NaN);
    if (number == Math.rint(number) && range.holds(number)) {
      return OptionalInt.of((int) number);
    }
    refuse(name, "a whole number " + range.words());
    return OptionalInt.empty();
  }

  /** A list of numbers; empty if absent. */
  public List<Double> numbers(String name, Range range) {
    Object value = values.get(name);
    if (value == null) {
      return List.of();
    }
    Optional<List<Double>> numbers = notation.numbers(value);
    if (numbers.isPresent() && numbers.get().stream().allMatch(range::holds)) {
      return numbers.get();
    }
    refuse(name, "a list of numbers " + range.words());
    return List.of();
  }

  public Optional<String> text(String name, int longest) {
    return required(name, textWords(longest), each -> optionalText(each, longest));
  }

  public Optional<String> optionalText(String name, int longest) {
    Object value = values.get(name);
    if (!(value instanceof String text)) {
      return refuseUnlessAbsent(name, value, textWords(longest));
    }
    String stripped = text.strip();
    if (stripped.length() > longest || !Texts.isStorable(stripped)) {
      refuse(name, textWords(longest));
      return Optional.empty();
    }
    return stripped.isEmpty() ? Optional.empty() : Optional.of(stripped);
  }

  /** A word that must be of a certain kind, told by {@code expected}. */
  public Optional<String> word(String name, Predicate<String> kind, String expected) {
    Object value = values.get(name);
    if (value instanceof String text && kind.test(text.strip())) {
      return Optional.of(text.strip());
    }
    refuse(name, expected);
    return Optional.empty();
  }

  /** One of a few words; {@code choices} are in the order in which they are told. */
  public <T> Optional<T> choice(String name, Map<String, T> choices) {
    String expected = "one of " + String.join(", ", choices.keySet());
    return required(
        name,
        expected,
        each -> {
          Object value = values.get(each);
          T chosen = value instanceof String text ? choices.get(text.strip()) : null;
          if (chosen == null) {
            refuse(each, expected);
          }
          return Optional.ofNullable(chosen);
        });
  }

  /** A list of a few words, each once; empty if absent. */
  public <T> List<T> choices(String name, Map<String, T> choices) {
    Object value = values.get(name);
    if (value == null) {
      return List.of();
    }
    List<?> words = value instanceof List<?> list ? list : List.of(value);
    if (!choices.keySet().containsAll(words) || Set.copyOf(words).size() != words.size()) {
      refuse(name, "a list of some of " + String.join(", ", choices.keySet()) + ", each once");
      return List.of();
    }
    return words.stream().map(choices::get).toList();
  }

  /** A truth value; false if absent. */
  public boolean flag(String name) {
    Object value = values.get(name);
    if (value == null) {
      return false;
    }
    Optional<Boolean> flag = notation.flag(value);
    if (flag.isEmpty()) {
      refuse(name, "true or false");
    }
    return flag.orElse(false);
  }

  /** Notes every field beside the known ones as unknown. */
  public void refuseBeside(Set<String> known) {
    beside(known)
        .forEach(
            (name, value) ->
                refuse(name, value, "none but the fields " + String.join(", ", known)));
  }

  /**
   * A note, followed by every field beside the known ones, each as {@code name: value} on a line of
   * its own: nothing that was sent is lost.
   */
  public Optional<String> noteWithRest(String name, Set<String> known, int longest) {
    List<String> lines = new ArrayList<>();
    optionalText(name, longest).ifPresent(lines::add);
    beside(known).forEach((field, value) -> lines.add(field + ": " + value));
    String note = String.join("\n", lines);
    if (note.length() > longest || !Texts.isStorable(note)) {
      refuse(name, note, textWords(longest) + ", unknown fields included");
      return Optional.empty();
    }
    return note.isEmpty() ? Optional.empty() : Optional.of(note);
  }

  private Map<String, Object> beside(Set<String> known) {
    Map<String, Object> rest = new LinkedHashMap<>();
    values.forEach(
        (name, value) -> {
          if (!known.contains(name)) {
            rest.put(written(name), value);
          }
        });
    return rest;
  }

  private <T> Optional<T> required(
      String name, String expected, Function<String, Optional<T>> reading) {
    return requirePresent(name, expected) ? reading.apply(name) : Optional.empty();
  }

  private boolean requirePresent(String name, String expected) {
    if (!has(name)) {
      refuse(name, expected);
      return false;
    }
    return true;
  }

  private <T> Optional<T> refuseUnlessAbsent(String name, @Nullable Object value, String expected) {
    if (value != null) {
      refuse(name, expected);
    }
    return Optional.empty();
  }

  private static String textWords(int longest) {
    return "a text of at most " + longest + " characters without control characters";
  }
}
