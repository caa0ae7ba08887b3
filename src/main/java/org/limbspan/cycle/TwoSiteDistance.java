package org.limbspan.cycle;

/**
 * The Moon's distance as two sites see it at the same time.
 *
 * @param distance mean over the pairs, in Earth radii
 * @param pairCount simultaneous pairs
 * @param leverage largest less smallest difference of the two sines of altitude: what the distance
 *     is read from
 */
public record TwoSiteDistance(MoonDistance distance, int pairCount, double leverage) {}
