package org.limbspan.reading;

import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Upload;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;

/** Gives readings out: page by page, or all of them as CSV. */
@RestController
@RequestMapping("/api/rigs/{slug}/readings")
class ReadingQueryController {

  private final Rigs rigs;
  private final ReadingPages pages;
  private final ReadingExport export;

  ReadingQueryController(Rigs rigs, ReadingPages pages, ReadingExport export) {
    this.rigs = rigs;
    this.pages = pages;
    this.export = export;
  }

  @GetMapping(produces = MediaType.APPLICATION_JSON_VALUE)
  ReadingPage page(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String from,
      @RequestParam(required = false) @Nullable String to,
      @RequestParam(required = false) @Nullable String limit,
      @RequestParam(required = false) @Nullable String after) {
    Rig rig = rigs.find(slug);
    return pages.page(
        rig, PageToken.spanAfter(after, SpanQuery.of(from, to)), SpanQuery.limit(limit));
  }

  @GetMapping(produces = Upload.TEXT_CSV)
  ResponseEntity<StreamingResponseBody> csv(
      @PathVariable String slug,
      @RequestParam(required = false) @Nullable String from,
      @RequestParam(required = false) @Nullable String to) {
    Rig rig = rigs.find(slug);
    ReadingSpan span = SpanQuery.of(from, to);
    return ResponseEntity.ok()
        .contentType(new MediaType("text", "csv", StandardCharsets.UTF_8))
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment().filename(slug + "-readings.csv").build().toString())
        .body(output -> export.write(rig, span, output));
  }
}
