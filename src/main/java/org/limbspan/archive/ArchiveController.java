package org.limbspan.archive;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.servlet.mvc.method.annotation.StreamingResponseBody;

/** {@code /api/rigs/SLUG/ledger.zip} and {@code /api/ledger}. */
@RestController
class ArchiveController {

  private static final MediaType ZIP = MediaType.parseMediaType("application/zip");

  private final Rigs rigs;
  private final ArchiveWriter writer;
  private final ArchiveReader reader;

  ArchiveController(Rigs rigs, ArchiveWriter writer, ArchiveReader reader) {
    this.rigs = rigs;
    this.writer = writer;
    this.reader = reader;
  }

  @GetMapping("/api/rigs/{slug}/ledger.zip")
  ResponseEntity<StreamingResponseBody> give(@PathVariable String slug) {
    Rig rig = rigs.find(slug);
    return ResponseEntity.ok()
        .contentType(ZIP)
        .header(
            HttpHeaders.CONTENT_DISPOSITION,
            ContentDisposition.attachment().filename(slug + "-ledger.zip").build().toString())
        .body(output -> writer.write(rig, output));
  }

  @PostMapping("/api/ledger")
  ResponseEntity<Taken> take(HttpServletRequest request) throws IOException {
    return ResponseEntity.status(HttpStatus.CREATED).body(reader.take(request.getInputStream()));
  }
}
