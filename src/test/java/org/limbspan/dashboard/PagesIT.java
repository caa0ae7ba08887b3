package org.limbspan.dashboard;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.ExchangeResult;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

@LimbspanIT
class PagesIT {

  @Autowired private RestTestClient http;

  @Test
  void describeARigByItsFormAndOpenItsLedger() {
    ExchangeResult entered = post("/rigs/new", rigForm("Pages hill", "47\u00b0 30\u2032 N"));
    assertThat(entered.getStatus()).isEqualTo(HttpStatus.FOUND);
    assertThat(entered.getResponseHeaders().getLocation()).hasPath("/rigs/pages-hill");
    assertThat(page("/rigs/pages-hill"))
        .contains(
            "<h1>Pages hill</h1>", "No reading is entered yet", "/api/rigs/pages-hill/readings");
  }

  @Test
  void keepWhatWasWrittenBesideWhatIsWrongWithIt() {
    ExchangeResult refused = post("/rigs/new", rigForm("Pages valley", "nowhere"));
    assertThat(refused.getStatus()).isEqualTo(HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(text(refused))
        .contains("value=\"nowhere\"", "value=\"Pages valley\"", "id=\"latitude-complaint\"")
        .contains("aria-invalid=\"true\"");
  }

  @Test
  void refuseAShortNameTwice() {
    post("/rigs/new", rigForm("Pages twice", "47.5"));
    ExchangeResult again = post("/rigs/new", rigForm("Pages twice", "47.5"));
    assertThat(again.getStatus()).isEqualTo(HttpStatus.UNPROCESSABLE_CONTENT);
    assertThat(text(again)).contains("id=\"slug-complaint\"");
  }

  @Test
  void showReadingsInTheLogAndInTheFigures() {
    post("/rigs/new", rigForm("Pages field", "47.5"));
    String csv =
        """
        taken_at,axis,diameter_arcmin,uncertainty_arcmin,note
        2024-03-01T01:10:00Z,horizontal,30.44,0.031,thin <cirrus>
        2024-03-10T06:10:00Z,horizontal,33.80,0.031,
        """;
    http.post()
        .uri("/api/rigs/pages-field/readings")
        .contentType(MediaType.valueOf("text/csv"))
        .body(csv)
        .exchange()
        .expectStatus()
        .isOk();
    assertThat(page("/rigs/pages-field"))
        .contains("30.440 \u00b1 0.031", "thin &lt;cirrus&gt;", "2 readings from 1 March 2024");
    for (String name : new String[] {"cycle", "residuals", "nights"}) {
      http.get()
          .uri("/rigs/pages-field/figure/" + name + ".json?points=300")
          .accept(MediaType.APPLICATION_JSON)
          .exchange()
          .expectStatus()
          .isOk()
          .expectBody()
          .jsonPath("$.whole.length()")
          .isEqualTo(2);
    }
    http.get()
        .uri("/rigs/pages-field/figure/cycle.json")
        .exchange()
        .expectBody()
        .jsonPath("$.value[1]")
        .isEqualTo(33.8);
    http.get()
        .uri("/rigs/pages-field/figure/nothing.json")
        .accept(MediaType.APPLICATION_JSON)
        .exchange()
        .expectStatus()
        .isNotFound();
  }

  @Test
  void writeTheChosenLightIntoThePage() {
    ExchangeResult chosen =
        http.post()
            .uri("/light")
            .contentType(MediaType.APPLICATION_FORM_URLENCODED)
            .accept(MediaType.TEXT_PLAIN)
            .body("light=night")
            .exchange()
            .expectStatus()
            .isNoContent()
            .expectBody()
            .returnResult();
    assertThat(chosen.getResponseHeaders().getFirst(HttpHeaders.SET_COOKIE))
        .startsWith("light=night;")
        .contains("SameSite=Lax");
    assertThat(text(get("/rigs/new", "light=night"))).contains("data-light=\"night\"");
    assertThat(text(get("/rigs/new", "light=<neon>"))).contains("data-light=\"device\"");
  }

  @Test
  void allowNothingFromElsewhere() {
    assertThat(get("/rigs/new", "").getResponseHeaders().getFirst("Content-Security-Policy"))
        .startsWith("default-src 'self';")
        .doesNotContain("unsafe");
  }

  @Test
  void tellInTheSameLookThatThereIsNoSuchPage() {
    ExchangeResult missing = get("/rigs/pages-unknown", "");
    assertThat(missing.getStatus()).isEqualTo(HttpStatus.NOT_FOUND);
    assertThat(text(missing)).contains("There is no rig", "Back to the first page");
  }

  private static MultiValueMap<String, String> rigForm(String name, String latitude) {
    MultiValueMap<String, String> form = new LinkedMultiValueMap<>();
    form.add("name", name);
    form.add("latitude", latitude);
    form.add("longitude", "9,5");
    form.add("elevation", "430");
    form.add("timeZone", "Europe/Zurich");
    return form;
  }

  private ExchangeResult post(String path, MultiValueMap<String, String> form) {
    return http.post()
        .uri(path)
        .contentType(MediaType.APPLICATION_FORM_URLENCODED)
        .accept(MediaType.TEXT_HTML)
        .body(form)
        .exchange()
        .expectBody()
        .returnResult();
  }

  private ExchangeResult get(String path, String cookie) {
    return http.get()
        .uri(path)
        .accept(MediaType.TEXT_HTML)
        .header(HttpHeaders.COOKIE, cookie)
        .exchange()
        .expectBody()
        .returnResult();
  }

  private String page(String path) {
    return text(get(path, ""));
  }

  private static String text(ExchangeResult result) {
    return new String(result.getResponseBodyContent(), StandardCharsets.UTF_8);
  }
}
