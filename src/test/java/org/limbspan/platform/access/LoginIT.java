package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

/** The owner logs in with a browser. */
@LimbspanIT
@TestPropertySource(properties = "limbspan.owner-password=" + LoginIT.PASSWORD)
class LoginIT {

  static final String PASSWORD = "gibbous-2034-crescent";

  private static final String FORM = "application/x-www-form-urlencoded";
  private static final String JSON = "application/json";

  @LocalServerPort private int port;

  private WebVisit visit;

  @BeforeEach
  void opensABrowser() {
    visit = new WebVisit(port);
  }

  @Test
  void leadsAStrangerToTheLoginAndBack() {
    HttpResponse<String> stranger = visit.page("/contents?a=b");
    assertThat(stranger.statusCode()).isEqualTo(302);
    assertThat(location(stranger)).endsWith("/login?to=%2Fcontents%3Fa%3Db");
    HttpResponse<String> page = visit.page("/login?to=%2Fcontents");
    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.body()).contains("name=\"to\" value=\"/contents\"").doesNotContain("Log out");
    assertThat(visit.page("/css/ledger.css").statusCode()).isEqualTo(200);

    HttpResponse<String> in = visit.logIn(PASSWORD, "/contents?a=b");
    assertThat(location(in)).isEqualTo("/contents?a=b");
    String cookie = cookie(in, WebVisit.LOGIN);
    assertThat(cookie).contains("HttpOnly").contains("SameSite=Lax").doesNotContain("Secure");
    assertThat(visit.page("/contents").body()).contains("Log out");
  }

  @Test
  void refusesAWrongPasswordAndEveryOtherUser() {
    HttpResponse<String> wrong = visit.logIn(PASSWORD + "x", "//moon.example");
    assertThat(location(wrong)).isEqualTo("/login?to=%2F&refused=yes");
    assertThat(visit.cookies()).doesNotContainKey(WebVisit.LOGIN);
    assertThat(visit.page(location(wrong)).body()).contains("not the owner");
    assertThat(location(visit.logIn(PASSWORD, "//moon.example"))).isEqualTo("/");
  }

  @Test
  void takesNothingFromALoginWithoutThePagesToken() {
    visit.logIn(PASSWORD, "/");
    String body = "name=&slug=&latitude=";
    assertThat(visit.post("/rigs/new", FORM, body).statusCode()).isEqualTo(403);
    assertThat(visit.post("/api/rigs", JSON, "{}").statusCode()).isEqualTo(403);
    assertThat(visit.post("/logout", FORM, "").statusCode()).isEqualTo(403);

    String page = visit.page("/rigs/new").body();
    String token = page.replaceAll("(?s).*name=\"_csrf\" value=\"([^\"]+)\".*", "$1");
    assertThat(page.split("name=\"_csrf\"", -1)).hasSize(4);
    assertThat(
            visit.post("/rigs/new", FORM, body + "&_csrf=" + WebVisit.encoded(token)).statusCode())
        .isEqualTo(422);
    String word = visit.cookie(WebVisit.PAGE);
    assertThat(visit.post("/api/rigs", JSON, "{}", "X-Page-Token", word).statusCode())
        .isEqualTo(422);
    assertThat(visit.post("/api/rigs", JSON, "{}", "X-Page-Token", "0" + word).statusCode())
        .isEqualTo(403);
  }

  @Test
  void givesANewTokenAndANewSessionWithEachLogin() {
    visit.page("/login");
    visit.logIn(PASSWORD, "/");
    visit.page("/");
    String session = visit.cookie(WebVisit.LOGIN);
    String word = visit.cookie(WebVisit.PAGE);
    visit.logIn(PASSWORD, "/");
    visit.page("/");
    assertThat(visit.cookie(WebVisit.LOGIN)).isNotEqualTo(session);
    assertThat(visit.cookie(WebVisit.PAGE)).isNotEqualTo(word);
    visit.cookies().put(WebVisit.LOGIN, session);
    assertThat(visit.page("/contents").statusCode()).isEqualTo(302);
  }

  @Test
  void endsALoginForGood() {
    visit.logIn(PASSWORD, "/");
    visit.page("/");
    String session = visit.cookie(WebVisit.LOGIN);
    HttpResponse<String> out =
        visit.post("/logout", FORM, "", "X-Page-Token", visit.cookie(WebVisit.PAGE));
    assertThat(location(out)).isEqualTo("/login?left=yes");
    visit.cookies().put(WebVisit.LOGIN, session);
    assertThat(visit.page("/contents").statusCode()).isEqualTo(302);
  }

  @Test
  void neverMakesABrowserAskByItself() {
    HttpResponse<String> script =
        visit.page("/api/rigs", "Sec-Fetch-Mode", "cors", "Sec-Fetch-Site", "same-origin");
    assertThat(script.statusCode()).isEqualTo(401);
    assertThat(script.headers().firstValue("WWW-Authenticate")).hasValue("Page realm=\"Limbspan\"");
    HttpResponse<String> opened = visit.page("/api/rigs", "Sec-Fetch-Mode", "navigate");
    assertThat(opened.statusCode()).isEqualTo(302);
  }

  @Test
  void letsTheOwnersProgramsInWithoutAToken() {
    HttpResponse<String> answer =
        visit.post(
            "/api/rigs",
            JSON,
            "{}",
            "Authorization",
            "Basic "
                + java.util.Base64.getEncoder()
                    .encodeToString(
                        ("owner:" + PASSWORD).getBytes(java.nio.charset.StandardCharsets.UTF_8)));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(visit.cookies()).doesNotContainKey(WebVisit.LOGIN);
  }

  @Test
  void refusesALoginFromAnotherSite() {
    HttpResponse<String> foreign = visit.logIn(PASSWORD, "/", "Origin", "https://moon.example");
    assertThat(foreign.statusCode()).isEqualTo(403);
    assertThat(visit.cookies()).doesNotContainKey(WebVisit.LOGIN);
  }

  @Test
  void takesNobodysWordThatTheLineIsSecure() {
    HttpResponse<String> in = visit.logIn(PASSWORD, "/", "X-Forwarded-Proto", "https");
    assertThat(cookie(in, WebVisit.LOGIN)).doesNotContain("Secure");
  }

  static String location(HttpResponse<String> answer) {
    return answer.headers().firstValue("Location").orElseThrow();
  }

  static String cookie(HttpResponse<String> answer, String name) {
    List<String> all = answer.headers().allValues("Set-Cookie");
    return all.stream().filter(each -> each.startsWith(name + "=")).findFirst().orElseThrow();
  }
}
