package org.limbspan.rig;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A key of a rig, without the key itself.
 *
 * @param name what the owner calls it, such as the computer it is on
 */
record RigKey(long id, String name, Instant createdAt, @Nullable Instant revokedAt) {}
