package org.limbspan.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;

class CsvBodyTest {

  private static final Range ANY = Range.between(-1e9, 1e9);

  @Test
  void readsFieldsByTheirColumnInAnyOrder() {
    List<Entry> entries = read("f_number,taken_at\n11,2026-05-02T19:14:00Z\n");
    assertThat(entries).hasSize(1);
    assertThat(entries.get(0).optionalNumber("fNumber", ANY)).hasValue(11);
    assertThat(entries.get(0).instant("takenAt")).isPresent();
    assertThat(entries.get(0).isSound()).isTrue();
  }

  @Test
  void takesAByteOrderMarkForNothing() {
    assertThat(read("\uFEFFa,b\n1,2\n").get(0).number("a", ANY)).hasValue(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void takesEveryLineEnding(String ending) {
    List<Entry> entries = read(String.join(ending, "a,b", "1,2", "3,4", ""));
    assertThat(entries).extracting(Entry::line).containsExactly(2, 3);
    assertThat(entries.get(1).number("b", ANY)).hasValue(4);
  }

  @ParameterizedTest
  @ValueSource(strings = {"a;b\n1658,47;0,5\n", "a\tb\n1658,47\t0,5\n", "a;b\n1658.47;0.5\n"})
  void takesDecimalCommasWhereTheCommaIsNotTheSeparator(String csv) {
    Entry entry = read(csv).get(0);
    assertThat(entry.number("a", ANY)).hasValue(1658.47);
    assertThat(entry.number("b", ANY)).hasValue(0.5);
  }

  @Test
  void refusesACommaInANumberWhereItIsTheSeparator() {
    // Nobody can tell whether 1,658 is a thousand and more, or little more than one.
    Entry entry = read("a,b\n\"1,658\",2\n").get(0);
    assertThat(entry.number("a", ANY)).isEmpty();
    assertThat(entry.violations()).extracting(Violation::value).containsExactly("1,658");
  }

  @Test
  void refusesPointAndCommaInOneNumber() {
    assertThat(read("a;b\n1.658,47;2\n").get(0).number("a", ANY)).isEmpty();
  }

  @Test
  void keepsLineBreaksInQuotedFieldsAndCountsTheLinesOfTheFile() {
    List<Entry> entries = read("a,note\r\n1,\"first\r\nsecond, \"\"quoted\"\"\"\r\n2,x\r\n");
    assertThat(entries.get(0).optionalText("note", 100)).hasValue("first\r\nsecond, \"quoted\"");
    assertThat(entries).extracting(Entry::line).containsExactly(2, 4);
  }

  @Test
  void skipsEmptyLinesAndLinesOfEmptyFields() {
    assertThat(read("a,b\n\n1,2\n,\n   \n3,4\n\n")).extracting(Entry::line).containsExactly(3, 6);
  }

  @Test
  void takesEmptyFieldsForAbsentOnes() {
    Entry entry = read("a,b\n,2\n").get(0);
    assertThat(entry.has("a")).isFalse();
    assertThat(entry.number("a", ANY)).isEmpty();
    assertThat(entry.violations())
        .containsExactly(
            new Violation("a", null, "a number from -1000000000 to 1000000000").atLine(2));
  }

  @Test
  void keepsUnknownColumnsWithTheNote() {
    Entry entry = read("a,note,seeing,Moon_Age\n1,calm,3 of 5,12\n").get(0);
    assertThat(entry.noteWithRest("note", Set.of("a", "note"), 100))
        .hasValue("calm\nseeing: 3 of 5\nmoon_age: 12");
  }

  @Test
  void namesTheLineOfAFieldTooFewOrTooMany() {
    List<Entry> entries = read("a,b,c\n1,2\n1,2,3,4\n1,2,3,,\n");
    assertThat(entries.get(0).violations())
        .containsExactly(
            new Violation("line", "2 fields", "as many fields as the header has, 3").atLine(2));
    assertThat(entries.get(1).violations()).hasSize(1);
    assertThat(entries.get(2).isSound()).as("padded by a spreadsheet").isTrue();
  }

  @Test
  void refusesAFileWithoutARequiredColumn() {
    CsvBody body =
        body("axis,diameter\n", List.of(Set.of("takenAt"), Set.of("diameterPx", "diameterMm")));
    assertThatExceptionOfType(InvalidInput.class)
        .isThrownBy(() -> body.forEach(entry -> {}))
        .withMessageContaining("taken_at, diameter_mm or diameter_px")
        .satisfies(e -> assertThat(e.violations()).hasSize(2));
  }

  @Test
  void refusesAColumnNamedTwice() {
    assertThatThrownBy(() -> read("a,b,A\n1,2,3\n"))
        .isInstanceOf(InvalidInput.class)
        .hasMessageContaining("A twice");
  }

  @Test
  void refusesAnEmptyFile() {
    assertThatThrownBy(() -> read("")).hasMessageContaining("empty");
    assertThatThrownBy(() -> read("\uFEFF")).hasMessageContaining("empty");
  }

  @Test
  void readsAHeaderAloneAsNoEntries() {
    assertThat(read("a,b\n")).isEmpty();
    assertThat(read("a,b")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"a,note\n1,\"cut sh", "a,note\n1,\"\n2,x\n3,y\n", "a,\"no"})
  void refusesAFileThatEndsInsideQuotes(String csv) {
    assertThatThrownBy(() -> read(csv))
        .isInstanceOf(InvalidInput.class)
        .hasMessageContaining("quot");
  }

  @Test
  void refusesWhatIsNotInTheEncodingNamed() {
    byte[] windows = "a,note\n1,Münster\n".getBytes(Charset.forName("windows-1252"));
    assertThatThrownBy(() -> read(windows, StandardCharsets.UTF_8))
        .isInstanceOf(InvalidInput.class)
        .hasMessageContaining("UTF-8");
    assertThat(read(windows, Charset.forName("windows-1252")).get(0).text("note", 99))
        .hasValue("Münster");
  }

  @Test
  void passesABrokenConnectionOn() {
    InputStream broken =
        new SequenceInputStream(
            new ByteArrayInputStream("a,b\n1,2\n".getBytes(StandardCharsets.UTF_8)),
            new BrokenStream());
    CsvBody body = new CsvBody(broken, StandardCharsets.UTF_8, List.of());
    assertThatThrownBy(() -> body.forEach(entry -> {}))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("connection reset");
  }

  @Test
  void refusesAnEndlessField() {
    assertThatThrownBy(() -> read("a,b\n1," + "x".repeat(3_000_000)))
        .isInstanceOf(InvalidInput.class);
  }

  private static List<Entry> read(String csv) {
    return read(csv.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8);
  }

  private static List<Entry> read(byte[] csv, Charset charset) {
    List<Entry> entries = new ArrayList<>();
    try {
      new CsvBody(new ByteArrayInputStream(csv), charset, List.of()).forEach(entries::add);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return entries;
  }

  private static CsvBody body(String csv, List<Set<String>> required) {
    return new CsvBody(
        new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)),
        StandardCharsets.UTF_8,
        required);
  }

  private static final class BrokenStream extends InputStream {

    @Override
    public int read() throws IOException {
      throw new IOException("connection reset");
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      return read();
    }
  }
}
