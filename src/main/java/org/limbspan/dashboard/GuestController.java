package org.limbspan.dashboard;

import jakarta.servlet.http.HttpServletRequest;
import java.net.URI;
import java.time.Duration;
import org.limbspan.platform.GuestBook;
import org.limbspan.platform.NotFound;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseCookie;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;

/** Opens a rig's ledger to whoever has its link; the word goes from the address into a cookie. */
@Controller
class GuestController {

  private static final Duration KEPT = Duration.ofDays(400);

  private final GuestBook guests;

  GuestController(GuestBook guests) {
    this.guests = guests;
  }

  @GetMapping("/guest/{word}")
  ResponseEntity<Void> open(@PathVariable String word, HttpServletRequest request) {
    String slug =
        guests
            .rigFor(word)
            .orElseThrow(
                () -> new NotFound("This link shows nothing: it is mistyped, or was revoked."));
    ResponseCookie cookie =
        ResponseCookie.from(GuestBook.COOKIE, word)
            .path("/")
            .httpOnly(true)
            .secure(request.isSecure())
            .sameSite("Lax")
            .maxAge(KEPT)
            .build();
    return ResponseEntity.status(HttpStatus.SEE_OTHER)
        .header(HttpHeaders.SET_COOKIE, cookie.toString())
        .header(HttpHeaders.CACHE_CONTROL, "no-store")
        .location(URI.create("/rigs/" + slug))
        .build();
  }
}
