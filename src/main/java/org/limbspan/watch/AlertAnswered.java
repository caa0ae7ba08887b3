package org.limbspan.watch;

import java.util.UUID;
import org.limbspan.rig.LedgerChange;

/** The owner answered an alert. */
public record AlertAnswered(long rigId, UUID alertId) implements LedgerChange {}
