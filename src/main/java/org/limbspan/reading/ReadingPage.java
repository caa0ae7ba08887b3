package org.limbspan.reading;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A page of readings, oldest first.
 *
 * @param next goes back in as {@code after}; absent on the last page
 */
record ReadingPage(
    List<Map<String, Object>> readings,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable String next) {}
