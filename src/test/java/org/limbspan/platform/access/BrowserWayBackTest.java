package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class BrowserWayBackTest {

  @ParameterizedTest
  @ValueSource(strings = {"/", "/rigs/garden", "/rigs/garden/cycle?from=2026-01-01T00:00:00Z"})
  void leadsBackInsideTheService(String path) {
    assertThat(Browser.wayBack(path)).isEqualTo(path);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "//moon.example",
        "/\\moon.example",
        "https://moon.example/",
        "rigs/garden",
        "/\t/moon.example",
        "/a\r\nSet-Cookie: b=c",
        "javascript:alert(1)",
        "/login?to=/login",
        "/%"
      })
  void leadsNowhereElse(String path) {
    assertThat(Browser.wayBack(path)).isEqualTo("/");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/rigs/garden?a=b&c=d"})
  void keepsTheQueryInTheAddress(String path) {
    assertThat(Browser.loginFor(path, "&refused=yes"))
        .isEqualTo("/login?to=%2Frigs%2Fgarden%3Fa%3Db%26c%3Dd&refused=yes");
  }
}
