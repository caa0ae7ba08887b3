package org.limbspan.notice;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Rig;
import org.limbspan.watch.Alert;

/**
 * A notice as a webhook gets it; mail has subject and text of it.
 *
 * @param id the same however often it is sent
 * @param kind the label of a {@link NoticeKind}
 * @param text plain, lines broken by line feeds
 * @param page where to look, if it is known how the pages are reached
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record NoticeDocument(
    UUID id,
    String kind,
    RigName rig,
    Instant writtenAt,
    String subject,
    String text,
    @Nullable String page,
    @Nullable Alert alert) {

  record RigName(String slug, String name) {

    static RigName of(Rig rig) {
      return new RigName(rig.slug(), rig.name());
    }
  }
}
