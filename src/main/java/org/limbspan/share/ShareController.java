package org.limbspan.share;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Query;
import org.limbspan.intake.Range;
import org.limbspan.platform.TooLarge;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Packages out, guests in, and both beside each other. */
@RestController
class ShareController {

  private static final MediaType ZIP = MediaType.parseMediaType("application/zip");

  private final Rigs rigs;
  private final Sharing sharing;
  private final Guests guests;
  private final Clock clock;

  ShareController(Rigs rigs, Sharing sharing, Guests guests, Clock clock) {
    this.rigs = rigs;
    this.sharing = sharing;
    this.guests = guests;
    this.clock = clock;
  }

  /**
   * @param licence SPDX name of one of {@link Licence}
   * @param positionDeg to which the position is rounded, 0 to 10; 0.1 if not given
   */
  @GetMapping("/api/rigs/{slug}/share.zip")
  ResponseEntity<byte[]> share(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String licence,
      @RequestParam(defaultValue = "0.1") String positionDeg) {
    Rig rig = rigs.find(slug);
    byte[] zip =
        sharing.zip(
            rig,
            Licence.ofSpdx(licence),
            Query.number("positionDeg", positionDeg, Range.between(0, 10)));
    return ResponseEntity.ok()
        .contentType(ZIP)
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment().filename(slug + "-share.zip").build().toString())
        .body(zip);
  }

  @PostMapping("/api/guests")
  @ResponseStatus(HttpStatus.CREATED)
  Guest load(HttpServletRequest request) throws IOException {
    byte[] body = request.getInputStream().readNBytes(GuestPackage.MOST_BYTES + 1);
    if (body.length > GuestPackage.MOST_BYTES) {
      throw new TooLarge("The package is larger than " + GuestPackage.MOST_BYTES + " bytes.");
    }
    return guests.load(body, clock.instant());
  }

  @GetMapping("/api/guests")
  List<Guest> all() {
    return guests.all();
  }

  @DeleteMapping("/api/guests/{id}")
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void remove(@PathVariable long id) {
    guests.remove(id);
  }

  @GetMapping("/api/rigs/{slug}/comparison")
  Comparison compare(@PathVariable String slug) {
    return guests.compare(rigs.find(slug));
  }
}
