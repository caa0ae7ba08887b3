package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import org.jspecify.annotations.Nullable;

/**
 * The form that enters a calibration by two stars, as it was filled in.
 *
 * @param separationFrom {@code typed} or {@code coordinates}
 * @param separationUnit one of {@link TypedAngle}
 * @param pairAltitude of a typed separation without air: where the pair stood, degrees; else empty
 * @param pairSlope of its line to the horizon, degrees
 * @param positionUncertainty of the computed separation, arcseconds
 * @param starMeasuredUnit {@code px}, {@code mm} or {@code in}
 */
record StarPairForm(
    @Nullable String starTakenAt,
    @Nullable String separationFrom,
    @Nullable String separation,
    @Nullable String separationUncertainty,
    @Nullable String separationUnit,
    @Nullable String pairAltitude,
    @Nullable String pairSlope,
    @Nullable StarForm first,
    @Nullable StarForm second,
    @Nullable String positionUncertainty,
    @Nullable String starMeasured,
    @Nullable String starMeasuredUncertainty,
    @Nullable String starMeasuredUnit,
    @Nullable String starNote) {

  static final StarPairForm EMPTY =
      new StarPairForm(
          null,
          "coordinates",
          null,
          "0.01",
          "arcmin",
          null,
          null,
          null,
          null,
          "0.3",
          null,
          null,
          "px",
          null);

  public boolean isTyped() {
    return text(separationFrom).equals("typed");
  }

  /** The first star; an empty one where nothing came of it. */
  public StarForm one() {
    return first == null ? StarForm.EMPTY : first;
  }

  /** The second star, likewise. */
  public StarForm other() {
    return second == null ? StarForm.EMPTY : second;
  }
}
