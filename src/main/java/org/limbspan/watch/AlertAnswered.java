package org.limbspan.watch;

import java.util.UUID;

/** The owner answered an alert. */
public record AlertAnswered(long rigId, UUID alertId) {}
