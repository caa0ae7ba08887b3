package org.limbspan.dashboard;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** The letter, to read and to print. */
@Controller
class LetterController {

  private final Letters letters;
  private final LetterPress press;

  LetterController(Letters letters, LetterPress press) {
    this.letters = letters;
    this.press = press;
  }

  @GetMapping("/rigs/{slug}/letter")
  ModelAndView letter(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String from,
      @RequestParam(required = false) @Nullable String to) {
    return new ModelAndView("letter", "letter", letters.of(slug, from, to));
  }

  @GetMapping("/api/rigs/{slug}/letter.pdf")
  ResponseEntity<byte[]> pdf(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String from,
      @RequestParam(required = false) @Nullable String to)
      throws IOException {
    byte[] pdf = press.pdf(letters.of(slug, from, to));
    return ResponseEntity.ok()
        .contentType(MediaType.APPLICATION_PDF)
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.inline().filename(slug + "-letter.pdf").build().toString())
        .body(pdf);
  }
}
