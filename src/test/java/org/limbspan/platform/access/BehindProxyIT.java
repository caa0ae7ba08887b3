package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.limbspan.testing.LimbspanIT;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.test.context.TestPropertySource;

/** A proxy that the owner named is believed. */
@LimbspanIT
@TestPropertySource(
    properties = {
      "limbspan.owner-password=" + BehindProxyIT.PASSWORD,
      "limbspan.proxies=127.0.0.1"
    })
class BehindProxyIT {

  static final String PASSWORD = "nutation-2035-libration";

  @LocalServerPort private int port;

  @Test
  void keepsItsCookiesToTheSecureLine() {
    WebVisit visit = new WebVisit(port);
    String[] secure = {"X-Forwarded-Proto", "https", "X-Forwarded-For", "198.51.100.7"};
    HttpResponse<String> in = visit.logIn(PASSWORD, "/", secure);
    assertThat(LoginIT.cookie(in, WebVisit.LOGIN)).contains("Secure");
    HttpResponse<String> page = visit.page("/", secure);
    assertThat(page.statusCode()).as(page.headers().map().toString()).isEqualTo(200);
    // the page's token is set with whichever of the two answers came first
    HttpResponse<String> first =
        in.headers().allValues("Set-Cookie").toString().contains(WebVisit.PAGE) ? in : page;
    assertThat(LoginIT.cookie(first, WebVisit.PAGE)).contains("Secure").contains("SameSite=Strict");
    assertThat(page.headers().firstValue("Strict-Transport-Security")).isPresent();
  }

  @Test
  void makesOneClientWaitAndNotAll() {
    WebVisit visit = new WebVisit(port);
    for (int i = 0; i < Attempts.MOST; i++) {
      visit.logIn("guess-number-" + i, "/", "X-Forwarded-For", "198.51.100.8");
    }
    assertThat(visit.logIn(PASSWORD, "/", "X-Forwarded-For", "198.51.100.8").statusCode())
        .isEqualTo(429);
    assertThat(visit.logIn(PASSWORD, "/", "X-Forwarded-For", "198.51.100.9").statusCode())
        .isEqualTo(302);
  }
}
