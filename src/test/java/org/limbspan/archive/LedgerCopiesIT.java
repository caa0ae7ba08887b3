package org.limbspan.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PhotoClient;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.platform.Problem;
import org.limbspan.platform.jobs.Jobs;
import org.limbspan.rig.Rigs;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.ReadingLines;
import org.limbspan.testing.ReferenceFolder;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.health.contributor.Health;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.unit.DataSize;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Copies that the service makes by itself, over a database with no other rigs. */
@LimbspanIT
@TestPropertySource(properties = "limbspan.copies.spread=0s")
class LedgerCopiesIT {

  private static final Duration PATIENCE = Duration.ofSeconds(60);

  @TempDir private Path folder;

  @Autowired private RestTestClient http;
  @Autowired private Rigs rigs;
  @Autowired private ArchiveWriter writer;
  @Autowired private ArchiveReader reader;
  @Autowired private HomeDirectory home;
  @Autowired private Jobs jobs;

  private Instant now = Instant.parse("2026-11-27T02:03:12Z");

  @Test
  void isTakenBackIntoAnEmptyInstallationToTheSameJudgement() throws Exception {
    ReferenceFolder reference = new ReferenceFolder("step-0.5");
    RigClient rig = reference.describe(http, "copied-eventful");
    rig.postCsv("/readings", reference.readings());
    Judged.get(rig, "/alerts");

    assertThat(ask().path("begun").asBoolean()).isTrue();
    Path copies = home.path().resolve("copies/copied-eventful");
    Path copy = awaitOne(copies);
    if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(copy)))
          .isEqualTo("rw-------");
    }
    assertThat(copy.getFileName().toString())
        .matches("copied-eventful-[0-9]{8}T[0-9]{6}Z-r[0-9]+\\.zip");
    try (OtherInstallation other = new OtherInstallation()) {
      HttpResponse<String> answer = other.take(Files.readAllBytes(copy));
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
      RigClient there = new RigClient(other.http(), rig.slug());
      for (String path : new String[] {"/alerts", "/cycle", "/nights", "/hypotheses"}) {
        assertThat(judgement(there, path)).isEqualTo(judgement(rig, path));
      }
      assertThat(judgement(there, "/alerts")).contains("scale-step");
    }
    JsonNode health = health();
    assertThat(health.path("status").asString()).isEqualTo("UP");
    assertThat(health.path("details").path("newest").path("copied-eventful").asString())
        .startsWith("20");
    assertThat(health.path("details").path("next").asString()).startsWith("20");
  }

  @Test
  void copiesWhatHasChangedAndNothingElse() throws Exception {
    RigClient rig = RigClient.described(http, "copied-on-change");
    LedgerCopies copies = copies(DataSize.ofMegabytes(1));
    copies.make(() -> false);
    assertThat(names("copied-on-change")).hasSize(1);
    pass(Duration.ofDays(1));
    copies.make(() -> false);
    assertThat(names("copied-on-change")).hasSize(1);

    rig.postCsv("/readings", ReadingLines.csv(0, 3));
    copies.make(() -> false);
    assertThat(names("copied-on-change"))
        .hasSize(2)
        .anyMatch(name -> name.startsWith("copied-on-change-20261128T020312Z-r"));
    assertThat(copies.newest().get("copied-on-change")).hasValue(now);
    assertThat(copies.troubles()).isEmpty();
  }

  @Test
  void takesThePhotographsAlongWhereThatIsWanted() throws Exception {
    RigClient rig = RigClient.described(http, "copied-photographed");
    byte[] frame =
        RenderedMoon.jpeg(
            RenderedMoon.scene(420, 300), ExifBlock.usual("2026:05:29 21:10:00").offset("+02:00"));
    new PhotoClient(http, rig).send("", "IMG_1.JPG", frame);
    copies(properties(DataSize.ofMegabytes(1), true)).make(() -> false);

    byte[] copy = Files.readAllBytes(folder.resolve(rig.slug()).resolve(names(rig.slug()).get(0)));
    assertThat(LedgerZip.files(copy))
        .containsEntry("originals/" + LedgerZip.sha256(frame) + ".jpg", frame);
    assertThat(copy).isEqualTo(LedgerZip.of(http, rig.slug(), "?photographs=true"));
  }

  /** A revision does not count all there is: after a week the copy itself is compared. */
  @Test
  void holdsAnOldCopyAgainstTheLedgerAndKeepsOneOfTwoAlike() throws Exception {
    RigClient.described(http, "copied-alike");
    LedgerCopies copies = copies(DataSize.ofMegabytes(1));
    copies.make(() -> false);
    String name = names("copied-alike").get(0);
    Path copy = folder.resolve("copied-alike").resolve(name);
    pass(Duration.ofDays(8));
    copies.make(() -> false);
    assertThat(names("copied-alike")).containsExactly(name);
    assertThat(Files.getLastModifiedTime(copy)).isEqualTo(FileTime.from(now));

    // another change of the ledger than those that are counted: as if the file were an older one
    Files.write(copy, new byte[] {1});
    Files.setLastModifiedTime(copy, FileTime.from(now));
    pass(Duration.ofDays(1));
    copies.make(() -> false);
    assertThat(names("copied-alike")).hasSize(1);
    pass(Duration.ofDays(7));
    copies.make(() -> false);
    assertThat(names("copied-alike")).hasSize(2);
  }

  @Test
  void rotatesItsOwnCopiesAndLeavesOtherFilesAlone() throws Exception {
    RigClient rig = RigClient.described(http, "copied-often");
    LedgerCopies copies = copies(DataSize.ofMegabytes(1));
    for (int night = 0; night < 9; night++) {
      rig.postCsv("/readings", ReadingLines.csv(night, 1));
      copies.make(() -> false);
      if (night == 0) {
        Files.writeString(folder.resolve("copied-often/diary.txt"), "an owner's own file");
        Files.writeString(folder.resolve("copied-often/.copied-often.part"), "cut off");
      }
      pass(Duration.ofDays(1));
    }
    // 27 November to 5 December 2026: seven days, Sunday 29 November, and Monday 30 for its month
    assertThat(names("copied-often"))
        .hasSize(8)
        .contains("diary.txt")
        .doesNotContain(".copied-often.part");
    assertThat(names("copied-often").toString())
        .doesNotContain("20261127")
        .doesNotContain("20261128T")
        .contains("20261129T", "20261130T", "20261205T");
  }

  @Test
  void makesNoCopyThatWouldFillTheDiskAndSaysSo() throws Exception {
    RigClient.described(http, "copied-no-room");
    LedgerCopies copies = copies(DataSize.ofTerabytes(1_000_000));
    assertThatThrownBy(() -> copies.make(() -> false)).hasMessageContaining("copied-no-room");
    assertThat(copies.troubles().get("copied-no-room"))
        .contains("no copy is made", "bytes left", "limbspan.copies.reserve");
    assertThat(folder.resolve("copied-no-room")).doesNotExist();
    Health health =
        new LedgerCopyHealth(copies, properties(DataSize.ofTerabytes(1_000_000)), jobs).health();
    assertThat(health.getStatus().getCode()).isEqualTo("WARNING");
    assertThat(health.getDetails().get("notCopied")).asString().contains("limbspan.copies.reserve");
  }

  @Test
  void keepsTheOthersComingWhenOneCannotBeCopied() throws Exception {
    RigClient.described(http, "copied-blocked");
    RigClient.described(http, "copied-unblocked");
    Files.writeString(folder.resolve("copied-blocked"), "a file where the folder should be");
    LedgerCopies copies = copies(DataSize.ofMegabytes(1));
    assertThatThrownBy(() -> copies.make(() -> false))
        .hasMessage("ledgers not copied: copied-blocked");
    assertThat(names("copied-unblocked")).hasSize(1);
    assertThat(copies.troubles()).containsOnlyKeys("copied-blocked");
    Files.delete(folder.resolve("copied-blocked"));
    copies.make(() -> false);
    assertThat(names("copied-blocked")).hasSize(1);
    assertThat(copies.troubles()).isEmpty();
  }

  @Test
  void findsACopyThatCannotBeTakenBack() throws Exception {
    RigClient.described(http, "copied-spoilt");
    byte[] whole = LedgerZip.of(http, "copied-spoilt", "");
    Path file = folder.resolve("whole.zip");
    Files.write(file, whole);
    reader.check(file);
    Files.write(file, LedgerZip.changed(whole, "rig.csv", text -> text + "\n", false));
    assertThatThrownBy(() -> reader.check(file)).isInstanceOf(Problem.class);
    byte[] cut = java.util.Arrays.copyOf(whole, whole.length - 30);
    Files.write(file, cut);
    assertThatThrownBy(() -> reader.check(file)).isInstanceOf(IOException.class);
  }

  @Test
  void stopsBetweenTwoRigsWhenTheServiceDoes() throws Exception {
    RigClient.described(http, "copied-not-now");
    copies(DataSize.ofMegabytes(1)).make(() -> true);
    assertThat(folder).isEmptyDirectory();
  }

  private LedgerCopies copies(DataSize reserve) {
    return copies(properties(reserve));
  }

  private LedgerCopies copies(CopyProperties properties) {
    return new LedgerCopies(
        rigs, writer, reader, properties, home, new MovedClock(), ZoneOffset.UTC);
  }

  private CopyProperties properties(DataSize reserve) {
    return properties(reserve, false);
  }

  private CopyProperties properties(DataSize reserve, boolean photographs) {
    return new CopyProperties(
        true, folder.toString(), "03:00", Duration.ZERO, photographs, reserve);
  }

  private void pass(Duration time) {
    now = now.plus(time);
  }

  private List<String> names(String slug) throws IOException {
    try (var files = Files.list(folder.resolve(slug))) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  private JsonNode ask() {
    return json(
        http.post()
            .uri("/api/copies")
            .exchange()
            .expectStatus()
            .isAccepted()
            .expectBody()
            .returnResult()
            .getResponseBodyContent());
  }

  private JsonNode health() {
    return json(http.get()
            .uri("/actuator/health")
            .exchange()
            .expectBody()
            .returnResult()
            .getResponseBodyContent())
        .path("components")
        .path("ledgerCopy");
  }

  private static JsonNode json(byte @Nullable [] body) {
    return new tools.jackson.databind.json.JsonMapper()
        .readTree(new String(body == null ? new byte[0] : body, StandardCharsets.UTF_8));
  }

  private static Path awaitOne(Path copies) throws Exception {
    Instant deadline = Instant.now().plus(PATIENCE);
    while (Instant.now().isBefore(deadline)) {
      if (Files.isDirectory(copies)) {
        try (var files = Files.list(copies)) {
          List<Path> whole = files.filter(file -> file.toString().endsWith(".zip")).toList();
          if (!whole.isEmpty()) {
            return whole.get(0);
          }
        }
      }
      Thread.sleep(100);
    }
    throw new AssertionError("no copy in " + copies);
  }

  private static String judgement(RigClient rig, String path) {
    ObjectNode body = (ObjectNode) Judged.get(rig, path);
    body.remove("judgedAt");
    return body.toString();
  }

  /** Shows what this test says. */
  private final class MovedClock extends Clock {

    @Override
    public java.time.ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(java.time.ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }
}
