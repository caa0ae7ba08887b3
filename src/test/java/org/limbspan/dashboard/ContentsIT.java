package org.limbspan.dashboard;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.limbspan.testing.RigClient;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.client.RestTestClient;

/** A society's contents: more rigs than a page holds. */
@LimbspanIT
class ContentsIT {

  @Autowired private RestTestClient http;

  @Test
  void tellsEveryRigOnOnePageAndWhatIsHeldOfIt() {
    RigClient first = RigClient.described(http, "contents-00");
    first.postJson(
        "/readings",
        """
        [{"takenAt": "2026-03-01T21:00:00Z", "axis": "horizontal", "diameterArcmin": 31.2,
          "uncertaintyArcmin": 0.05},
         {"takenAt": "2026-03-05T21:00:00Z", "axis": "horizontal", "diameterArcmin": 31.4,
          "uncertaintyArcmin": 0.05}]""");
    for (int number = 1; number < ContentsReader.LINES + 5; number++) {
      RigClient.described(http, "contents-%02d".formatted(number));
    }
    StringBuilder all = new StringBuilder();
    int pages = 0;
    for (boolean more = true; more; pages++) {
      String page = page(pages + 1);
      assertThat(page.split("class=\"leader\"", -1)).hasSizeBetween(2, ContentsReader.LINES + 1);
      all.append(page);
      more = page.contains("rel=\"next\"");
    }
    assertThat(pages).isGreaterThan(1);
    for (int number = 0; number < ContentsReader.LINES + 5; number++) {
      String address = "href=\"/rigs/contents-%02d\"".formatted(number);
      assertThat(all.toString().split(Pattern.quote(address), -1)).hasSize(2);
    }
    assertThat(all)
        .contains("2 readings", "since 1 March 2026; latest reading 5 March 2026")
        .contains("Rigs 1 to " + ContentsReader.LINES + " of ");
    assertThat(page(pages)).contains("rel=\"prev\"").doesNotContain("rel=\"next\"");
  }

  @Test
  void refusesAPageThatIsNotThere() {
    http.get().uri("/contents?page=0").exchange().expectStatus().isBadRequest();
    http.get().uri("/contents?page=100000").exchange().expectStatus().isBadRequest();
    http.get().uri("/contents?page=first").exchange().expectStatus().isBadRequest();
  }

  private String page(int number) {
    byte[] body =
        http.get()
            .uri("/contents?page=" + number)
            .exchange()
            .expectStatus()
            .isOk()
            .returnResult(byte[].class)
            .getResponseBody();
    return new String(body, UTF_8);
  }
}
