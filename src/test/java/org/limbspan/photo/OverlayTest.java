package org.limbspan.photo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.limbspan.limb.LimbArc;
import org.limbspan.photo.file.PhotoFormat;
import org.limbspan.sky.Axis;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class OverlayTest {

  private static final DiscFigures FIGURES =
      new DiscFigures(
          new DiscFigures.Along(400, 0.1, 0.2),
          new DiscFigures.Along(380, 0.1, 0.2),
          301,
          259,
          0.1,
          0,
          0,
          270,
          List.of(new LimbArc(0, 90), new LimbArc(180, 360)),
          List.of(new LimbArc(90, 180)),
          3,
          0.2,
          0,
          0,
          0.99);

  private static final Photograph PHOTO =
      new Photograph(
          7,
          "0".repeat(64),
          1,
          "a.jpg",
          PhotoFormat.JPEG,
          600,
          520,
          Instant.EPOCH,
          "offset",
          Axis.HORIZONTAL,
          null,
          null,
          null,
          null,
          null,
          Instant.EPOCH);

  @Test
  void drawsOutlineArcsAndDiametersInThePicturesOwnPixels() throws Exception {
    Element svg = parsed(Overlay.svg(PHOTO, FIGURES));
    assertThat(svg.getAttribute("viewBox")).isEqualTo("-0.5 -0.5 600 520");
    List<String> kinds = new ArrayList<>();
    NodeList paths = svg.getElementsByTagName("path");
    for (int i = 0; i < paths.getLength(); i++) {
      kinds.add(((Element) paths.item(i)).getAttribute("class"));
    }
    assertThat(kinds)
        .containsExactly("outline", "used", "used", "set-aside", "horizontal", "vertical");
    String horizontal = ((Element) paths.item(4)).getAttribute("d");
    assertThat(horizontal).isEqualTo("M501.00 259.00L101.00 259.00");
    assertThat(((Element) paths.item(3)).getAttribute("stroke-dasharray")).isNotEmpty();
  }

  @Test
  void carriesNoStyleThatAStrictPageWouldRefuse() {
    assertThat(Overlay.svg(PHOTO, FIGURES)).doesNotContain("style").doesNotContain("script");
  }

  private static Element parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
        .getDocumentElement();
  }
}
