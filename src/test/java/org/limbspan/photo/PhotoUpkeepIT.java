package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.limbspan.photo.file.PhotoFile;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.sky.Axis;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** What a crash leaves undone is done at the next start; brackets follow the setups. */
@LimbspanIT
class PhotoUpkeepIT {

  private static final Instant FIRST = Instant.parse("2026-05-29T19:10:00Z");

  @Autowired private RestTestClient http;
  @Autowired private Rigs rigs;
  @Autowired private PhotoWriter writer;
  @Autowired private BracketBook book;
  @Autowired private PhotoUpkeep upkeep;

  @TempDir private Path folder;

  @Test
  void entersTheReadingOfAPhotographThatWasKeptBeforeACrash() throws Exception {
    RigClient rig = RigClient.described(http, "upkeep-crash");
    enter(rig, "a", FIRST, 420); // as if the service had died right after
    assertThat(rig.get("/readings").body().path("readings").size()).isZero();

    upkeep.start();
    JsonNode reading = await(rig, 1).get(0);
    assertThat(reading.path("diameterPx").asDouble()).isEqualTo(420);
  }

  @Test
  void partsABracketAtASetupThatIsEnteredLater() throws Exception {
    RigClient rig = RigClient.described(http, "upkeep-setup");
    enter(rig, "b", FIRST, 420);
    enter(rig, "c", FIRST.plusSeconds(120), 420.1);
    book.bringInLine(rigs.find(rig.slug()));
    assertThat(await(rig, 1).get(0).path("framesPx").size()).isEqualTo(2);

    JsonNode setup = rig.postJson("/setups", "{\"startedAt\": \"2026-05-29T19:11:00Z\"}").body();
    JsonNode parted = await(rig, 2);
    assertThat(parted.get(0).path("diameterPx").asDouble()).isEqualTo(420);
    assertThat(parted.get(1).path("setup").asInt()).isEqualTo(1);

    rig.postJson(
        "/setups/" + setup.path("id").asLong() + "/withdraw", "{\"reason\": \"not touched\"}");
    // the one is taken back before the other is corrected
    assertThat(await(rig, held -> held.size() == 1 && held.get(0).path("framesPx").size() == 2))
        .hasSize(1);
  }

  @Test
  void bringsInLineAsOftenAsOneLikes() throws Exception {
    RigClient rig = RigClient.described(http, "upkeep-again");
    enter(rig, "d", FIRST, 420);
    Rig its = rigs.find(rig.slug());
    long revision = 0;
    for (int i = 0; i < 3; i++) {
      book.bringInLine(its);
      assertThat(rigs.revision(its.id())).isGreaterThanOrEqualTo(revision);
      revision = i == 0 ? rigs.revision(its.id()) : revision;
      assertThat(rigs.revision(its.id())).isEqualTo(revision);
    }
  }

  @Test
  void leavesAReadingAloneThatSomebodyTookBack() throws Exception {
    RigClient rig = RigClient.described(http, "upkeep-back");
    enter(rig, "e", FIRST, 420);
    Rig its = rigs.find(rig.slug());
    book.bringInLine(its);
    long id = await(rig, 1).get(0).path("id").asLong();
    rig.postJson("/readings/" + id + "/withdraw", "{\"reason\": \"cloud\"}");
    book.bringInLine(its);
    assertThat(rig.get("/readings").body().path("readings").size()).isZero();
  }

  private JsonNode await(RigClient rig, int readings) throws InterruptedException {
    return await(rig, held -> held.size() == readings);
  }

  private JsonNode await(RigClient rig, Predicate<JsonNode> wanted) throws InterruptedException {
    Instant end = Instant.now().plus(Duration.ofSeconds(60));
    JsonNode held = rig.get("/readings").body().path("readings");
    while (!wanted.test(held) && Instant.now().isBefore(end)) {
      Thread.sleep(100);
      held = rig.get("/readings").body().path("readings");
    }
    assertThat(wanted.test(held)).as(held.toString()).isTrue();
    return held;
  }

  /** A photograph in the database without its reading. */
  private void enter(RigClient rig, String name, Instant takenAt, double diameterPx)
      throws Exception {
    Path file =
        Files.write(
            folder.resolve(name),
            PictureBytes.png(new BufferedImage(9, 9, BufferedImage.TYPE_3BYTE_BGR)));
    DiscFigures.Along along = new DiscFigures.Along(diameterPx, 0.1, 0.2);
    DiscFigures figures =
        new DiscFigures(along, along, 4, 4, 0.1, 0, 0, 360, List.of(), List.of(), 3, 0, 0, 0, 1);
    NewPhoto photo =
        new NewPhoto(
            name.repeat(64),
            name + ".png",
            Files.size(file),
            PhotoFile.header(file),
            new ShotInstant(takenAt, ShotInstant.Clock.SENDER),
            Axis.HORIZONTAL,
            figures);
    writer.enter(rigs.find(rig.slug()), List.of(photo), OnConflict.REFUSE);
  }
}
