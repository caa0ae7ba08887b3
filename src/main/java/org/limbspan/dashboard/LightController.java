package org.limbspan.dashboard;

import java.net.URI;
import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseCookie;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestParam;

/** Keeps the choice of light. */
@Controller
class LightController {

  static final String COOKIE = "light";

  @PostMapping("/light")
  ResponseEntity<Void> choose(
      @RequestParam("light") String choice,
      @RequestHeader(value = HttpHeaders.ACCEPT, defaultValue = "") String accept,
      @RequestHeader(value = HttpHeaders.REFERER, required = false) @Nullable String referer) {
    ResponseCookie cookie =
        ResponseCookie.from(COOKIE, Light.ofLabel(choice).label())
            .path("/")
            .httpOnly(true)
            .sameSite("Lax")
            .maxAge(Duration.ofDays(400))
            .build();
    boolean staysOnPage = !accept.contains(MediaType.TEXT_HTML_VALUE);
    ResponseEntity.BodyBuilder answer =
        ResponseEntity.status(staysOnPage ? HttpStatus.NO_CONTENT : HttpStatus.SEE_OTHER)
            .header(HttpHeaders.SET_COOKIE, cookie.toString());
    return staysOnPage ? answer.build() : answer.location(pathOf(referer)).build();
  }

  /** Only the path is taken over: the way back never leads to another host. */
  private static URI pathOf(@Nullable String referer) {
    try {
      String path = referer == null ? null : URI.create(referer).getRawPath();
      return URI.create(path == null || !path.matches("/([^/].*)?") ? "/" : path);
    } catch (IllegalArgumentException unreadable) {
      return URI.create("/");
    }
  }
}
