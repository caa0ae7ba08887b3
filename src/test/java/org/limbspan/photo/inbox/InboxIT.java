package org.limbspan.photo.inbox;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.Photos;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.rig.Rigs;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** A rig's own computer copies its photographs into a folder. */
@LimbspanIT
class InboxIT {

  private static final byte[] FILE =
      RenderedMoon.jpeg(
          RenderedMoon.scene(420, 101), ExifBlock.usual("2026:05:29 21:10:00").offset("+02:00"));
  private static int count;

  @Autowired private RestTestClient http;
  @Autowired private Rigs rigs;
  @Autowired private Photos photos;

  @TempDir private Path folder;

  private final HandClock clock = new HandClock();
  private Inbox inbox;
  private RigClient rig;
  private Path its;

  @BeforeEach
  void describeARig() throws IOException {
    rig = RigClient.described(http, "inbox-" + ++count);
    its = Files.createDirectories(folder.resolve(rig.slug()));
    inbox = new Inbox(folder, rigs, photos, clock);
  }

  @Test
  void takesAFileOnceItHasStoppedGrowing() throws IOException {
    Path file = Files.write(its.resolve("IMG_0101.JPG"), Arrays.copyOf(FILE, FILE.length / 2));
    inbox.takeWhatIsWhole();
    clock.pass(Duration.ofSeconds(5));
    Files.write(file, FILE);
    inbox.takeWhatIsWhole();
    assertThat(file).exists();

    clock.pass(Duration.ofSeconds(5));
    inbox.takeWhatIsWhole();
    assertThat(file).doesNotExist();
    assertThat(names(its.resolve("taken"))).containsExactly("IMG_0101.JPG");
  }

  @Test
  void movesWhatItTookAndWhatItRefusedWithTheReason() throws IOException {
    Files.write(its.resolve("IMG_0101.JPG"), FILE);
    Files.writeString(its.resolve("notes.txt"), "clear and calm");
    lookTwice();

    assertThat(names(its.resolve("taken"))).containsExactly("IMG_0101.JPG");
    assertThat(names(its.resolve("refused"))).containsExactly("notes.txt", "notes.txt.txt");
    assertThat(its.resolve("refused/notes.txt.txt"))
        .content(StandardCharsets.UTF_8)
        .contains("not a picture");
    JsonNode told = rig.get("/photos/refused").body().path("refused");
    assertThat(told.size()).isEqualTo(1);
    assertThat(told.get(0).path("file").asString()).isEqualTo("notes.txt");
    assertThat(rig.get("/readings").body().path("readings").size()).isEqualTo(1);
  }

  @Test
  void saysWhyInTheWordsOfAPage() throws IOException {
    Files.write(
        its.resolve("ahead.jpg"),
        RenderedMoon.jpeg(RenderedMoon.scene(420, 101), ExifBlock.usual("2999:05:29 21:10:00")));
    lookTwice();
    assertThat(its.resolve("refused/ahead.jpg.txt"))
        .content(StandardCharsets.UTF_8)
        .contains("taken at 29 May 2999, 21:10", "Set the camera's clock.", "filled in there")
        .doesNotContain("takenAt");
  }

  @Test
  void waitsForTheLastFileOfABracket() throws IOException {
    Files.write(its.resolve("IMG_0101.JPG"), FILE);
    inbox.takeWhatIsWhole();
    clock.pass(Duration.ofSeconds(10));
    Path growing = Files.write(its.resolve("IMG_0102.JPG"), new byte[] {1});
    inbox.takeWhatIsWhole();
    assertThat(its.resolve("IMG_0101.JPG")).exists();

    // two minutes are enough, whatever still grows
    clock.pass(Duration.ofMinutes(2));
    Files.write(growing, new byte[] {2}, StandardOpenOption.APPEND);
    inbox.takeWhatIsWhole();
    assertThat(its.resolve("IMG_0101.JPG")).doesNotExist();
    assertThat(growing).exists();
  }

  @Test
  void overwritesNothingAndDoublesNothingWhenAFileComesAgain() throws IOException {
    for (int i = 0; i < 2; i++) {
      Files.write(its.resolve("IMG_0101.JPG"), FILE);
      lookTwice();
    }
    assertThat(names(its.resolve("taken"))).containsExactly("IMG_0101-2.JPG", "IMG_0101.JPG");
    assertThat(rig.get("/photos").body().path("photos").size()).isEqualTo(1);
  }

  @Test
  void leavesFoldersOfNobodyAlone() throws IOException {
    Path nobody = Files.createDirectories(folder.resolve("nobody"));
    Files.write(nobody.resolve("IMG_0101.JPG"), FILE);
    lookTwice();
    assertThat(nobody.resolve("IMG_0101.JPG")).exists();
  }

  private void lookTwice() throws IOException {
    inbox.takeWhatIsWhole();
    clock.pass(Duration.ofSeconds(5));
    inbox.takeWhatIsWhole();
  }

  private static List<String> names(Path shelf) throws IOException {
    try (Stream<Path> files = Files.list(shelf)) {
      return files.map(file -> String.valueOf(file.getFileName())).sorted().toList();
    }
  }

  private static final class HandClock extends Clock {

    private Instant now = Instant.now();

    void pass(Duration time) {
      now = now.plus(time);
    }

    @Override
    public Instant instant() {
      return now;
    }

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }
  }
}
