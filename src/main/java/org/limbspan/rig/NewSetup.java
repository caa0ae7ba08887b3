package org.limbspan.rig;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A setup to be entered: from {@code startedAt} on, camera, zoom or mount is another.
 *
 * @param conflict what to do if one from that instant is held or was taken back
 */
public record NewSetup(Instant startedAt, @Nullable String note, OnConflict conflict) {}
