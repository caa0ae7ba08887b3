package org.limbspan.archive;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** {@code /api/rigs/SLUG/ledger.zip} and {@code /api/ledger}. */
@RestController
class ArchiveController {

  private static final String ZIP = "application/zip";

  private final Rigs rigs;
  private final ArchiveWriter writer;
  private final ArchiveReader reader;

  ArchiveController(Rigs rigs, ArchiveWriter writer, ArchiveReader reader) {
    this.rigs = rigs;
    this.writer = writer;
    this.reader = reader;
  }

  /** Not streamed asynchronously: the photographs of years may take longer than that may last. */
  @GetMapping("/api/rigs/{slug}/ledger.zip")
  void give(
      @PathVariable String slug,
      @RequestParam(defaultValue = "false") boolean photographs,
      HttpServletResponse response)
      throws IOException {
    Rig rig = rigs.find(slug);
    response.setContentType(ZIP);
    response.setHeader(
        HttpHeaders.CONTENT_DISPOSITION,
        ContentDisposition.attachment().filename(slug + "-ledger.zip").build().toString());
    writer.write(rig, photographs, response.getOutputStream());
  }

  @PostMapping("/api/ledger")
  ResponseEntity<Taken> take(HttpServletRequest request) throws IOException {
    return ResponseEntity.status(HttpStatus.CREATED).body(reader.take(request.getInputStream()));
  }
}
