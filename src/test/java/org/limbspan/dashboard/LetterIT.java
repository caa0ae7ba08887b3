package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.limbspan.demo.Demo;
import org.limbspan.testing.Judged;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;

/** The letter about a month of the demo's invented rig. */
@LimbspanIT
class LetterIT {

  @Autowired private RestTestClient http;
  @Autowired private Demo demo;

  @Test
  void isPrintedAsPdfWithTheFiguresOfThePages() throws IOException {
    RigClient rig = new RigClient(http, demo.enter().slug());
    double period = Judged.get(rig, "/cycle").path("period").path("days").asDouble();
    byte[] pdf =
        http.get()
            .uri(
                "/api/rigs/"
                    + rig.slug()
                    + "/letter.pdf?from=2025-12-01T00:00:00Z&to=2026-01-15T00:00:00Z")
            .exchange()
            .expectStatus()
            .isOk()
            .expectHeader()
            .contentType(MediaType.APPLICATION_PDF)
            .expectBody()
            .returnResult()
            .getResponseBodyContent();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isBetween(2, 4);
      String text = new PDFTextStripper().getText(document);
      assertThat(text)
          .contains("Garden pillar (invented)", "1 December 2025 to 15 January 2026")
          .contains("Does the size change within a night?", "Remark 1", "Methods and sources")
          .contains(String.valueOf(period).substring(0, 5));
    }
  }

  @Test
  void refusesAnIntervalThatEndsBeforeItBegins() {
    RigClient rig = new RigClient(http, demo.enter().slug());
    assertThat(
            rig.get("/letter.pdf?from=2026-01-15T00:00:00Z&to=2025-12-01T00:00:00Z")
                .body()
                .path("violations")
                .get(0)
                .path("field")
                .asString())
        .isEqualTo("to");
  }
}
