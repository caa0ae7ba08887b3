package org.limbspan.photo.bracket;

/**
 * A frame that was left out of its reading.
 *
 * @param differencePercent from the frames used, over their diameter
 * @param standardUncertainties the same in units of its standard uncertainty
 */
public record SetAside(Frame frame, double differencePercent, double standardUncertainties) {}
