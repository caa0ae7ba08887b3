package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.limbspan.limb.LimbArc;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;
import tools.jackson.databind.JsonNode;

/** What is kept of a photograph and how it is shown. */
@LimbspanIT
class KeptPhotoIT {

  private static final byte[] FILE =
      RenderedMoon.jpeg(
          RenderedMoon.scene(420, 101),
          ExifBlock.usual("2026:05:29 21:10:00").offset("+02:00").orientation(6));
  private static int count;

  @Autowired private RestTestClient http;
  @Autowired private HomeDirectory home;
  @Autowired private PhotoStore store;
  @Autowired private PhotoWriter writer;
  @Autowired private BracketBook book;
  @Autowired private PhotoRemeasuring remeasuring;
  @Autowired private Rigs rigs;
  private RigClient rig;
  private JsonNode answer;

  @BeforeEach
  void sendOne() {
    rig = RigClient.described(http, "kept-" + ++count);
    answer = new PhotoClient(http, rig).send("", "IMG_0101.JPG", FILE);
  }

  @Test
  void keepsTheOriginalByItsHash() throws IOException {
    JsonNode photo = photo();
    String sha256 = photo.path("sha256").asString();
    Path original =
        home.path().resolve("photos").resolve(sha256.substring(0, 2)).resolve(sha256 + ".jpg");
    assertThat(Files.readAllBytes(original)).isEqualTo(FILE);
    assertThat(bytes("/photos/" + photo.path("id").asLong() + "/original")).isEqualTo(FILE);
    try (var left = Files.list(home.path().resolve("photos/incoming"))) {
      assertThat(left).isEmpty();
    }
  }

  @Test
  void tellsHowItWasTakenAndWhatWasMeasured() {
    JsonNode photo = photo();
    assertThat(photo.path("file").asString()).isEqualTo("IMG_0101.JPG");
    assertThat(photo.path("takenAt").asString()).isEqualTo("2026-05-29T19:10:00Z");
    assertThat(photo.path("clock").asString()).isEqualTo("offset");
    assertThat(photo.path("focalLengthMm").asDouble()).isEqualTo(400);
    assertThat(photo.path("exposureS").asDouble()).isEqualTo(0.004);
    assertThat(photo.path("camera").asString()).isEqualTo("Invented Garden camera");
    assertThat(photo.path("use").asString()).isEqualTo("used");
    assertThat(photo.path("diameterPx")).isEqualTo(answer.path("diameterPx"));
    assertThat(photo.path("measurements").size()).isEqualTo(1);
    // stored 600 x 520, turned by a right angle
    assertThat(photo.path("widthPx").asInt()).isEqualTo(520);
    assertThat(photo.path("heightPx").asInt()).isEqualTo(600);
  }

  @Test
  void showsThePictureUprightAndTheOverlayInItsPixels() throws IOException {
    String at = "/photos/" + answer.path("photoId").asLong();
    BufferedImage shown =
        ImageIO.read(new ByteArrayInputStream(bytes(at + "/image?longestSidePx=300")));
    assertThat(shown.getWidth()).isEqualTo(260);
    assertThat(shown.getHeight()).isEqualTo(300);
    double centreX = answer.path("centreX").asDouble() / 2;
    double centreY = answer.path("centreY").asDouble() / 2;
    // bright inside the measured disc, dark outside, on all four sides
    for (int[] side : new int[][] {{1, 0}, {-1, 0}, {0, 1}, {0, -1}}) {
      assertThat(grey(shown, centreX + 100 * side[0], centreY + 100 * side[1])).isGreaterThan(60);
      assertThat(grey(shown, centreX + 112 * side[0], centreY + 112 * side[1])).isLessThan(60);
    }
    String overlay = rig.getText(at + "/overlay.svg", "image/svg+xml");
    assertThat(overlay).contains("viewBox=\"-0.5 -0.5 520 600\"").contains("class=\"used\"");
  }

  @Test
  void keepsTheOlderResultBesideThatOfANewerMethod() {
    long id = answer.path("photoId").asLong();
    DiscFigures newer = figures(424);
    Rig its = rigs.find(rig.slug());
    writer.add(its, id, new MeasuredByMethod(Darkroom.METHOD + 1, Instant.EPOCH, newer, null));
    book.bringInLine(its);

    JsonNode readings = rig.get("/readings").body().path("readings");
    assertThat(readings.size()).isEqualTo(1);
    assertThat(readings.get(0).path("diameterPx").asDouble()).isEqualTo(424);
    JsonNode measurements = rig.get("/photos").body().path("photos").get(0).path("measurements");
    assertThat(measurements.size()).isEqualTo(2);
    assertThat(measurements.get(0).path("horizontalPx").asDouble()).isEqualTo(424);
    assertThat(measurements.get(1).path("horizontalPx")).isEqualTo(answer.path("horizontalPx"));
  }

  @Test
  void measuresAnewFromTheOriginal() {
    Rig its = rigs.find(rig.slug());
    assertThat(remeasuring.behind(its, Darkroom.METHOD)).isZero();
    assertThat(remeasuring.behind(its, Darkroom.METHOD + 1)).isEqualTo(1);
    remeasuring.measure(its, Darkroom.METHOD + 1);
    List<MeasuredByMethod> both = store.measurements(answer.path("photoId").asLong());
    assertThat(both).hasSize(2);
    assertThat(both.get(0).figures()).isEqualTo(both.get(1).figures());
    assertThat(rig.postJson("/photos/measure-again", "{}").body().path("toMeasure").asInt())
        .isZero();
  }

  private static DiscFigures figures(double diameterPx) {
    DiscFigures.Along along = new DiscFigures.Along(diameterPx, 0.1, 0.2);
    List<LimbArc> arcs = List.of(new LimbArc(0, 360));
    return new DiscFigures(along, along, 260, 300, 0.1, 0, 0, 360, arcs, List.of(), 3, 0, 0, 0, 1);
  }

  private JsonNode photo() {
    return rig.get("/photos?readingId=" + answer.path("readingId").asLong())
        .body()
        .path("photos")
        .get(0);
  }

  private byte[] bytes(String path) {
    return http.get()
        .uri("/api/rigs/" + rig.slug() + path)
        .exchange()
        .expectStatus()
        .isOk()
        .expectBody()
        .returnResult()
        .getResponseBodyContent();
  }

  private static int grey(BufferedImage image, double x, double y) {
    return image.getRaster().getSample((int) Math.round(x), (int) Math.round(y), 1);
  }
}
