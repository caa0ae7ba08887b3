package org.limbspan.rig;

import java.time.Instant;
import org.limbspan.sky.HorizonLine;

/**
 * A rig's own horizon as it stands.
 *
 * @param version counted from 1; every entry and every taking back is one
 */
public record RecordedHorizon(HorizonLine line, int version, Instant enteredAt) {}
