package org.limbspan.platform.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockHttpSession;

class LoginAgeTest {

  private static final Duration LONGEST = Duration.ofDays(7);

  private final MockHttpSession session = new MockHttpSession();

  @Test
  void lastsAsLongAsItMay() throws Exception {
    requestAfter(LONGEST.minusMinutes(1));
    assertThat(session.isInvalid()).isFalse();
  }

  @Test
  void endsHoweverBusyItWas() throws Exception {
    requestAfter(LONGEST.plusMinutes(1));
    assertThat(session.isInvalid()).isTrue();
  }

  private void requestAfter(Duration since) throws Exception {
    Instant now = Instant.ofEpochMilli(session.getCreationTime()).plus(since);
    MockHttpServletRequest request = new MockHttpServletRequest("GET", "/");
    request.setSession(session);
    new LoginAge(LONGEST, Clock.fixed(now, ZoneOffset.UTC))
        .doFilter(request, new MockHttpServletResponse(), new MockFilterChain());
  }
}
