package org.limbspan.limb;

/**
 * A place in the thumbnail where brightness changes most steeply.
 *
 * @param x to a fraction of a thumbnail pixel
 * @param y the same, downwards
 * @param towardsX unit vector towards the brighter side
 * @param towardsY the same, downwards
 * @param strength change of light a pixel
 */
record EdgePixel(double x, double y, double towardsX, double towardsY, double strength) {}
