package org.limbspan.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;

class JsonBodyTest {

  private static final Range ANY = Range.between(-1e9, 1e9);

  @Test
  void tellsOneObjectFromAListOfOne() throws IOException {
    assertThat(body("{\"a\": 1}").forEach(entry -> assertThat(entry.line()).isNull()))
        .isEqualTo(EntrySource.Shape.ONE);
    assertThat(body("[{\"a\": 1}]").forEach(entry -> assertThat(entry.line()).isEqualTo(1)))
        .isEqualTo(EntrySource.Shape.LIST);
    assertThat(body("[]").forEach(entry -> {})).isEqualTo(EntrySource.Shape.LIST);
  }

  @Test
  void countsTheEntriesOfAList() {
    assertThat(read("[{\"a\": 1}, {\"a\": 2}, {\"a\": 3}]"))
        .extracting(Entry::line)
        .containsExactly(1, 2, 3);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "null",
        "3",
        "\"text\"",
        "[1]",
        "[[{}]]",
        "{\"a\": 1",
        "[{\"a\": 1}",
        "[{\"a\": 1},",
        "{\"a\": NaN}",
        "{\"a\": 1} {\"a\": 2}",
        "{\"a\": 1, \"a\": 2}",
        "[{\"a\": 1}] x",
        "taken_at,axis"
      })
  void refusesWhatIsNotAnObjectOrListOfThem(String json) {
    assertThatThrownBy(() -> read(json)).isInstanceOf(InvalidInput.class);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\"NaN\"", "\"Infinity\"", "\"1.5\"", "true", "[1]", "{}", "1e999"})
  void takesOnlyFiniteNumbersForNumbers(String value) {
    Entry entry = only("{\"a\": " + value + "}");
    assertThat(entry.number("a", ANY)).isEmpty();
    assertThat(entry.violations()).extracting(Violation::field).containsExactly("a");
  }

  @Test
  void holdsNumbersToTheirRange() {
    Entry entry = only("{\"latitudeDeg\": 90.0001, \"exposureS\": 0, \"iso\": 100.5}");
    entry.number("latitudeDeg", Range.between(-90, 90));
    entry.optionalNumber("exposureS", Range.positiveTo(60));
    entry.optionalWhole("iso", Range.between(1, 1e7));
    assertThat(entry.violations())
        .containsExactly(
            new Violation("latitudeDeg", 90.0001, "a number from -90 to 90"),
            new Violation("exposureS", 0.0, "a number above 0, at most 60"),
            new Violation("iso", 100.5, "a whole number from 1 to 10000000"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-05-02T21:14:00+02:00",
        "2026-05-02T19:14:00Z",
        "2026-05-02T19:14Z",
        "2026-05-02t19:14:00.000z",
        "2026-05-03T00:59:00+05:45",
        "2026-05-02T21:14:00+02"
      })
  void takesEveryWayToWriteOneInstant(String text) {
    assertThat(only("{\"at\": \"" + text + "\"}").instant("at"))
        .hasValue(Instant.parse("2026-05-02T19:14:00Z"));
  }

  @Test
  void keepsInstantsToTheMicrosecond() {
    assertThat(only("{\"at\": \"2026-05-02T19:14:00.123456789Z\"}").instant("at"))
        .hasValue(Instant.parse("2026-05-02T19:14:00.123456Z"));
  }

  @Test
  void saysWhyALocalTimeIsNotEnough() {
    Entry entry = only("{\"at\": \"2026-05-02T21:14:00\"}");
    assertThat(entry.instant("at")).isEmpty();
    assertThat(entry.violations().get(0).expected())
        .contains("offset")
        .contains("different instants");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "\"2026-05-02\"",
        "\"21:14\"",
        "\"2026-02-30T21:14:00Z\"",
        "\"2026-05-02T25:14:00Z\"",
        "\"2026-05-02 21:14:00Z\"",
        "\"yesterday\"",
        "1777749240",
        "true"
      })
  void refusesWhatIsNoInstant(String value) {
    Entry entry = only("{\"at\": " + value + "}");
    assertThat(entry.instant("at")).isEmpty();
    assertThat(entry.violations().get(0).expected()).contains("ISO 8601");
  }

  @Test
  void allowsAClockToBeADayAheadAndNoMore() {
    Instant now = Instant.parse("2026-05-01T19:14:00Z");
    assertThat(only("{\"at\": \"2026-05-02T19:14:00Z\"}").instantUpTo("at", now)).isPresent();
    Entry late = only("{\"at\": \"2026-05-02T19:14:00.000001Z\"}");
    assertThat(late.instantUpTo("at", now)).isEmpty();
    assertThat(late.violations().get(0).expected()).contains("a day ahead");
  }

  @Test
  void holdsAnUncertaintyBelowItsValue() {
    Entry entry = only("{\"u\": 5}");
    assertThat(entry.uncertainty("u", ANY, OptionalDouble.of(5))).isEmpty();
    assertThat(entry.violations().get(0).expected()).contains("below the value, 5.0");
  }

  @Test
  void takesBlankTextAndNullForAbsent() {
    Entry entry = only("{\"a\": null, \"b\": \"  \"}");
    assertThat(entry.has("a")).isFalse();
    assertThat(entry.has("b")).isFalse();
    assertThat(entry.optionalText("b", 9)).isEmpty();
    assertThat(entry.isSound()).isTrue();
    assertThat(entry.text("b", 9)).isEmpty();
    assertThat(entry.isSound()).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"\"0123456789\"", "\"a\\u0000b\"", "\"\\ud800\"", "\"a\\u0007\"", "7"})
  void refusesTextThatCannotBeHeld(String value) {
    Entry entry = only("{\"a\": " + value + "}");
    assertThat(entry.text("a", 9)).isEmpty();
    assertThat(entry.isSound()).isFalse();
  }

  @Test
  void takesTextOfAnyScriptWithLineBreaks() {
    assertThat(only("{\"a\": \" 満月\\n\\t\\uD83C\\uDF15 \"}").text("a", 9))
        .hasValue("満月\n\t\uD83C\uDF15");
  }

  @Test
  void takesOneOfAFewWords() {
    Map<String, Integer> choices = new LinkedHashMap<>();
    choices.put("one", 1);
    choices.put("two", 2);
    assertThat(only("{\"a\": \"two\"}").choice("a", choices)).hasValue(2);
    Entry wrong = only("{\"a\": \"three\"}");
    assertThat(wrong.choice("a", choices)).isEmpty();
    assertThat(wrong.violations().get(0).expected()).isEqualTo("one of one, two");
  }

  @Test
  void takesTruthValuesOnly() {
    assertThat(only("{\"a\": true}").flag("a")).isTrue();
    assertThat(only("{}").flag("a")).isFalse();
    Entry wrong = only("{\"a\": \"yes\"}");
    assertThat(wrong.flag("a")).isFalse();
    assertThat(wrong.isSound()).isFalse();
  }

  @Test
  void takesListsOfNumbers() {
    assertThat(only("{\"a\": [1, 2.5, 3]}").numbers("a", ANY)).containsExactly(1.0, 2.5, 3.0);
    for (String wrong : List.of("[1, \"2\"]", "[1, null]", "[]", "7", "[1, 2e9]")) {
      Entry entry = only("{\"a\": " + wrong + "}");
      assertThat(entry.numbers("a", ANY)).as(wrong).isEmpty();
      assertThat(entry.isSound()).as(wrong).isFalse();
    }
  }

  @Test
  void namesFieldsThatAreNotKnown() {
    Entry entry = only("{\"a\": 1, \"latitude\": 3}");
    entry.refuseBeside(new LinkedHashSet<>(Set.of("a")));
    assertThat(entry.violations())
        .containsExactly(new Violation("latitude", 3.0, "none but the fields a"));
  }

  private static Entry only(String json) {
    return read(json).get(0);
  }

  private static List<Entry> read(String json) {
    List<Entry> entries = new ArrayList<>();
    try {
      body(json).forEach(entries::add);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return entries;
  }

  private static JsonBody body(String json) {
    return new JsonBody(new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)));
  }
}
