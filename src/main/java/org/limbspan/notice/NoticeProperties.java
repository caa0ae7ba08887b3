package org.limbspan.notice;

import java.time.Duration;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * What the owner says about notices.
 *
 * @param from sender of mail; none is sent without
 * @param pages address under which the pages are reached, for links, such as {@code
 *     https://moon.example.org}
 * @param privateAddresses whether a webhook may be within the house
 * @param timeout for a webhook to take a notice
 */
@ConfigurationProperties("limbspan.notices")
record NoticeProperties(
    @Nullable String from,
    @Nullable String pages,
    boolean privateAddresses,
    @DefaultValue("15s") Duration timeout) {

  NoticeProperties {
    from = from == null || from.isBlank() ? null : from.strip();
    pages = pages == null || pages.isBlank() ? null : pages.strip().replaceAll("/+$", "");
  }

  /** The address of a page. */
  Optional<String> page(String path) {
    return Optional.ofNullable(pages).map(base -> base + path);
  }
}
