package org.limbspan.rig;

import java.time.Instant;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Site;

/** One camera, lens and mount at one site. */
public record Rig(
    long id,
    String slug,
    String name,
    Site site,
    ZoneId timeZone,
    @Nullable String note,
    Instant createdAt) {}
