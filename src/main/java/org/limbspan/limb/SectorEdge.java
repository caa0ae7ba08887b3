package org.limbspan.limb;

/**
 * The limb as measured in one sector.
 *
 * @param angle on the disc, radians
 * @param shift of the limb outwards from the outline that was assumed, pixels
 * @param shiftUncertainty from the scatter of the pixels, pixels
 * @param contrast light of the lit ground over the sky
 * @param scatter of the pixels about the fit, light
 * @param misfit sum of the squared residuals, large ones cut, light squared
 * @param pixels number of pixels used
 * @param widthShift by how much the edge is wider than assumed, pixels of standard deviation; 0
 *     when not asked for
 * @param clippedShare share of the sector's inner pixels that are clipped
 * @param clipLevel saturation over the contrast, at most 1
 */
record SectorEdge(
    double angle,
    double shift,
    double shiftUncertainty,
    double contrast,
    double scatter,
    double misfit,
    int pixels,
    double widthShift,
    double clippedShare,
    double clipLevel) {

  double signalToNoise() {
    return scatter > 0 ? contrast / scatter : contrast > 0 ? 1e6 : 0;
  }
}
