package org.limbspan.cycle;

/**
 * A period found in the readings.
 *
 * @param periodDays days
 * @param amplitude half of crest to trough, relative
 */
public record SpectralLine(Estimate periodDays, Estimate amplitude) {}
