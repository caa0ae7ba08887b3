package org.limbspan.notice;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.limbspan.intake.Upload;
import org.limbspan.rig.Rig;
import org.limbspan.rig.Rigs;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

/** Enters, changes, tests and takes away recipients of notices. */
@RestController
@RequestMapping("/api/rigs/{slug}/notice-recipients")
class RecipientController {

  private final Rigs rigs;
  private final Notices notices;

  RecipientController(Rigs rigs, Notices notices) {
    this.rigs = rigs;
    this.notices = notices;
  }

  @GetMapping
  List<RecipientView> all(@PathVariable String slug) {
    return notices.of(rigs.find(slug)).stream().map(RecipientView::of).toList();
  }

  @PostMapping(consumes = MediaType.APPLICATION_JSON_VALUE)
  ResponseEntity<Entered> enter(@PathVariable String slug, HttpServletRequest request) {
    Rig rig = rigs.find(slug);
    EnteredRecipient entered = notices.enter(rig, RecipientEntry.recipient(Upload.single(request)));
    return ResponseEntity.status(HttpStatus.CREATED)
        .cacheControl(CacheControl.noStore())
        .body(new Entered(entered.recipient().id(), entered.secret()));
  }

  @PutMapping(path = "/{id}", consumes = MediaType.APPLICATION_JSON_VALUE)
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void change(@PathVariable String slug, @PathVariable UUID id, HttpServletRequest request) {
    RecipientEntry.Change change = RecipientEntry.change(Upload.single(request));
    notices.change(rigs.find(slug), id, change.wishes(), change.paused());
  }

  @DeleteMapping("/{id}")
  @ResponseStatus(HttpStatus.NO_CONTENT)
  void remove(@PathVariable String slug, @PathVariable UUID id) {
    notices.remove(rigs.find(slug), id);
  }

  @PostMapping("/{id}/test")
  NoticeStand test(@PathVariable String slug, @PathVariable UUID id) {
    return notices.test(rigs.find(slug), id);
  }

  /**
   * @param secret of a webhook, told this once
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Entered(UUID id, @Nullable String secret) {}
}
