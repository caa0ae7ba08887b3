package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.test.context.TestPropertySource;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Every route there is, found by reflection, asked by everybody there is. */
@LimbspanIT
@TestPropertySource(properties = "limbspan.owner-password=" + AccessMatrixIT.PASSWORD)
class AccessMatrixIT {

  static final String PASSWORD = "syzygy-2032-quadrature";

  private static final String FORM_OF_FILES = "multipart/form-data; boundary=limb";

  private static final JsonMapper MAPPER = new JsonMapper();

  /** What a rig's key may send; all else is the owner's. */
  private static final Set<String> INTAKE =
      Set.of(
          "POST /api/rigs/{slug}/readings",
          "POST /api/rigs/{slug}/photos",
          "POST /api/rigs/{slug}/calibrations");

  /** What anybody may ask for: the login page, and the light of a page, kept in his own browser. */
  private static final Set<String> OPEN = Set.of("GET /login", "POST /light", "GET /guest/{word}");

  /** What a guest's link shows, of its rig only. */
  private static final Set<String> GUESTS =
      Set.of(
          "GET /rigs/{slug}",
          "GET /rigs/{slug}/cycle",
          "GET /rigs/{slug}/nights",
          "GET /rigs/{slug}/conclusions",
          "GET /rigs/{slug}/alerts",
          "GET /rigs/{slug}/live",
          "GET /rigs/{slug}/readings/{id}",
          "GET /rigs/{slug}/figure/{name}.json",
          "GET /rigs/{slug}/drawing/{name}.json",
          "GET /rigs/{slug}/drawing/evidence/{id}.json",
          "GET /api/rigs/{slug}/readings",
          "GET /api/rigs/{slug}/calibrations",
          "GET /api/rigs/{slug}/setups",
          "GET /api/rigs/{slug}/cycle",
          "GET /api/rigs/{slug}/nights",
          "GET /api/rigs/{slug}/hypotheses",
          "GET /api/rigs/{slug}/conclusions",
          "GET /api/rigs/{slug}/alerts",
          "GET /api/rigs/{slug}/photos",
          "GET /api/rigs/{slug}/photos/{id}/image",
          "GET /api/rigs/{slug}/photos/{id}/overlay.svg");

  private final HttpClient client = HttpClient.newHttpClient();

  @Autowired private RestTestClient http;

  @LocalServerPort private int port;

  @Autowired
  @Qualifier("requestMappingHandlerMapping")
  private RequestMappingHandlerMapping routes;

  @Test
  void givesEveryRouteToWhomItBelongs() {
    describe("matrix-own");
    describe("matrix-other");
    String own = cut("matrix-own", "garden computer");
    String other = cut("matrix-other", "roof computer");
    Map<String, String> identities = new LinkedHashMap<>();
    identities.put("nobody", "");
    identities.put("own key", "Authorization: Bearer " + own);
    identities.put("other key", "Authorization: Bearer " + other);
    identities.put("own guest", "Cookie: limbspan-guest=" + link("matrix-own"));
    identities.put("other guest", "Cookie: limbspan-guest=" + link("matrix-other"));
    identities.put("page without token", "Cookie: limbspan-login=" + loggedIn());
    identities.put("owner", "Authorization: " + basic(PASSWORD));
    StringBuilder matrix = new StringBuilder();
    Set<String> all = routes();
    assertThat(all).hasSizeGreaterThan(30).contains("POST /api/rigs/{slug}/readings");
    for (String route : all) {
      matrix.append(String.format("%-52s", route));
      for (Map.Entry<String, String> identity : identities.entrySet()) {
        boolean let = isLet(route, identity.getValue());
        matrix.append(' ').append(identity.getKey()).append(let ? ": yes" : ": no ");
        boolean expected =
            switch (identity.getKey()) {
              case "owner" -> true;
              case "own key" -> OPEN.contains(route) || INTAKE.contains(route);
              case "own guest" -> OPEN.contains(route) || GUESTS.contains(route);
              case "page without token" -> OPEN.contains(route) || route.startsWith("GET ");
              default -> OPEN.contains(route);
            };
        assertThat(let).as("%s by %s", route, identity.getKey()).isEqualTo(expected);
      }
      matrix.append('\n');
    }
    System.out.println(matrix);
  }

  @Test
  void showsAKeyOnceAndRevokesIt() {
    describe("key-life");
    String key = cut("key-life", "first");
    JsonNode listed = json("GET", "/api/rigs/key-life/keys", basic(PASSWORD), null);
    assertThat(listed.get(0).path("name").asString()).isEqualTo("first");
    assertThat(listed.toString()).doesNotContain(key);
    String bearer = "Authorization: Bearer " + key;
    assertThat(status("POST", "/api/rigs/key-life/readings", bearer)).isEqualTo(422);
    String id = listed.get(0).path("id").asString();
    String owner = "Authorization: " + basic(PASSWORD);
    assertThat(status("DELETE", "/api/rigs/key-life/keys/" + id, owner)).isEqualTo(204);
    assertThat(status("POST", "/api/rigs/key-life/readings", bearer)).isEqualTo(401);
    assertThat(status("DELETE", "/api/rigs/key-life/keys/" + id, owner)).isEqualTo(404);
  }

  @Test
  void showsAGuestNeitherFormsNorThePlaceUntilTheLinkIsRevoked() {
    describe("guest-life");
    String word = link("guest-life");
    WebVisit guest = new WebVisit(port);
    HttpResponse<String> opened = guest.page("/guest/" + word);
    assertThat(opened.statusCode()).isEqualTo(303);
    assertThat(LoginIT.location(opened)).endsWith("/rigs/guest-life");
    assertThat(LoginIT.cookie(opened, "limbspan-guest")).contains("HttpOnly", "SameSite=Lax");

    describe("guest-other");
    for (String path : new String[] {"", "/cycle", "/nights", "/alerts"}) {
      HttpResponse<String> page = guest.page("/rigs/guest-life" + path);
      assertThat(page.statusCode()).as(path).isEqualTo(200);
      assertThat(page.body().replaceAll("(?s)<form class=\"light.*?</form>", ""))
          .doesNotContain("<form")
          .doesNotContain("40\u00b0")
          .doesNotContain("600 m")
          .doesNotContain("/tonight\"")
          .doesNotContain("/rigs/new");
    }
    assertThat(guest.page("/rigs/guest-other").statusCode()).isEqualTo(403);
    assertThat(guest.page("/contents").statusCode()).isEqualTo(403);
    assertThat(guest.page("/api/rigs/guest-life").statusCode()).isEqualTo(403);
    assertThat(guest.page("/guest/limbspan-guest-mistyped-by-somebody").statusCode())
        .isEqualTo(404);

    JsonNode links = json("GET", "/api/rigs/guest-life/guest-links", basic(PASSWORD), null);
    assertThat(links.toString()).doesNotContain(word);
    String id = links.get(0).path("id").asString();
    String owner = "Authorization: " + basic(PASSWORD);
    assertThat(status("DELETE", "/api/rigs/guest-life/guest-links/" + id, owner)).isEqualTo(204);
    assertThat(LoginIT.location(guest.page("/rigs/guest-life"))).startsWith("/login?to=");
  }

  /** As a browser without scripts sends them: the page's token is a field of the form. */
  @Test
  void takesPhotographsOfTheSheetFromTheOwnersPageOnly() {
    describe("sheet-access");
    String path = "/rigs/sheet-access/calibrations/photos";
    WebVisit guest = new WebVisit(port);
    guest.page("/guest/" + link("sheet-access"));
    assertThat(guest.page("/rigs/sheet-access").statusCode()).isEqualTo(200);
    assertThat(guest.page("/rigs/sheet-access/rig").statusCode()).isEqualTo(403);
    assertThat(guest.post(path, FORM_OF_FILES, sheetForm("")).statusCode()).isEqualTo(403);

    WebVisit owner = new WebVisit(port);
    owner.logIn(PASSWORD, "/");
    String page = owner.page("/rigs/sheet-access/rig").body();
    String form = page.substring(page.indexOf("action=\"" + path + "\""));
    String token = form.replaceAll("(?s)^.*?name=\"_csrf\" value=\"([^\"]+)\".*", "$1");
    assertThat(owner.post(path, FORM_OF_FILES, sheetForm("")).statusCode()).isEqualTo(403);
    HttpResponse<String> answer = owner.post(path, FORM_OF_FILES, sheetForm(token));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    assertThat(answer.body()).contains("letter.jpg", "Refused", "0 measured, 1 refused");
  }

  private static String sheetForm(String token) {
    return Map.of(
                "_csrf", token,
                "sheetLength", "297",
                "sheetLengthUncertainty", "0.2",
                "sheetLengthUnit", "mm",
                "sheetDistance", "50",
                "sheetDistanceUncertainty", "0.02",
                "sheetDistanceUnit", "m")
            .entrySet()
            .stream()
            .map(
                field ->
                    "--limb\r\nContent-Disposition: form-data; name=\"%s\"\r\n\r\n%s\r\n"
                        .formatted(field.getKey(), field.getValue()))
            .collect(Collectors.joining())
        + "--limb\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"letter.jpg\"\r\n"
        + "Content-Type: image/jpeg\r\n\r\nno picture\r\n--limb--\r\n";
  }

  private Set<String> routes() {
    Set<String> all = new TreeSet<>();
    for (RequestMappingInfo info : routes.getHandlerMethods().keySet()) {
      for (String pattern : info.getPatternValues()) {
        info.getMethodsCondition()
            .getMethods()
            .forEach(method -> all.add(method.name() + " " + pattern));
        if (info.getMethodsCondition().getMethods().isEmpty()) {
          all.add("GET " + pattern);
        }
      }
    }
    return all;
  }

  /** The word of a new guest link. */
  private String link(String slug) {
    return json(
            "POST",
            "/api/rigs/" + slug + "/guest-links",
            basic(PASSWORD),
            "{\"name\": \"a friend\"}")
        .path("path")
        .asString()
        .substring("/guest/".length());
  }

  private String loggedIn() {
    WebVisit visit = new WebVisit(port);
    visit.logIn(PASSWORD, "/");
    return visit.cookie(WebVisit.LOGIN);
  }

  private boolean isLet(String route, String identity) {
    String[] parts = route.split(" ", 2);
    String path =
        parts[1]
            .replace("{slug}", "matrix-own")
            .replaceAll("\\{[^}]*}", "00000000-0000-0000-0000-000000000000");
    int status = status(parts[0], path, identity);
    return status != 401 && status != 403;
  }

  private void describe(String slug) {
    json(
        "POST",
        "/api/rigs",
        basic(PASSWORD),
        """
        {"slug": "%s", "name": "Invented", "latitudeDeg": 40, "longitudeDeg": -3,
         "elevationM": 600, "timeZone": "Europe/Madrid"}"""
            .formatted(slug));
  }

  private String cut(String slug, String name) {
    return json(
            "POST",
            "/api/rigs/" + slug + "/keys",
            basic(PASSWORD),
            "{\"name\": \"%s\"}".formatted(name))
        .path("key")
        .asString();
  }

  private JsonNode json(
      String method,
      String path,
      String authorization,
      @org.jspecify.annotations.Nullable String body) {
    var request =
        http.method(HttpMethod.valueOf(method))
            .uri(path)
            .header(HttpHeaders.AUTHORIZATION, authorization);
    byte[] answer =
        (body == null ? request : request.contentType(MediaType.APPLICATION_JSON).body(body))
            .exchange()
            .expectStatus()
            .is2xxSuccessful()
            .expectBody()
            .returnResult()
            .getResponseBodyContent();
    return MAPPER.readTree(answer);
  }

  /** The status alone: the body of a stream of news has no end. */
  private int status(String method, String path, String identity) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
    if (!identity.isEmpty()) {
      String[] header = identity.split(": ", 2);
      request.header(header[0], header[1]);
    }
    if (method.equals("GET")) {
      request.GET();
    } else {
      request
          .header(HttpHeaders.CONTENT_TYPE, MediaType.APPLICATION_JSON_VALUE)
          .method(method, HttpRequest.BodyPublishers.ofString("{}"));
    }
    try {
      HttpResponse<InputStream> answer =
          client.send(request.build(), HttpResponse.BodyHandlers.ofInputStream());
      answer.body().close();
      return answer.statusCode();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError(e);
    }
  }

  private static String basic(String password) {
    return "Basic "
        + Base64.getEncoder()
            .encodeToString(("owner:" + password).getBytes(StandardCharsets.UTF_8));
  }
}
