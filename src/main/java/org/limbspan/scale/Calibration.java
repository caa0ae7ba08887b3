package org.limbspan.scale;

/**
 * One photograph of something of known angular size: the scale is that angle over the length
 * measured.
 */
public record Calibration(Reference reference, ImageLength measured) {

  /**
   * The plate scale this calibration gives on its own, with the uncertainty of the measured length
   * as its independent part and that of the reference as its common part (JCGM 100:2008, 5.1.6:
   * relative uncertainties of a product add in quadrature).
   */
  public PlateScale plateScale() {
    double scale = reference.angleArcsec() / measured.value();
    double common =
        reference.sharedErrors().stream()
            .mapToDouble(SharedError::relativeUncertainty)
            .reduce(0, Math::hypot);
    return new PlateScale(
        scale, scale * measured.relativeUncertainty(), scale * common, measured.unit());
  }
}
