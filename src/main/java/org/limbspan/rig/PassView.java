package org.limbspan.rig;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.LineCrossings;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Pass;
import org.limbspan.sky.PassOverLine;

/** A pass as clients see it; what does not happen, such as a rise, is left out. */
@JsonInclude(JsonInclude.Include.NON_NULL)
record PassView(
    @Nullable Instant riseAt,
    Instant culminationAt,
    @Nullable Instant setAt,
    double culminationAltitudeDeg,
    double culminationApparentAltitudeDeg,
    @Nullable Double riseAzimuthDeg,
    double culminationAzimuthDeg,
    @Nullable Double setAzimuthDeg,
    @Nullable Double diameterAtRiseArcmin,
    double diameterAtCulminationArcmin,
    @Nullable Double diameterAtSetArcmin,
    @Nullable Double predictedRatio,
    double illuminatedFraction,
    double sunSeparationDeg,
    @Nullable OverLine overHorizonLine) {

  /**
   * The pass over the rig's own horizon.
   *
   * @param shows whether the Moon comes over it at all
   * @param riseAltitudeDeg apparent, of the Moon's centre
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record OverLine(
      boolean shows,
      @Nullable Instant riseAt,
      @Nullable Double riseAzimuthDeg,
      @Nullable Double riseAltitudeDeg,
      @Nullable Instant setAt,
      @Nullable Double setAzimuthDeg,
      @Nullable Double setAltitudeDeg) {

    static OverLine of(Optional<PassOverLine> seen) {
      Optional<MoonSight> rise = seen.flatMap(PassOverLine::rise);
      Optional<MoonSight> set = seen.flatMap(PassOverLine::set);
      return new OverLine(
          seen.isPresent(),
          rise.map(MoonSight::at).orElse(null),
          rise.map(MoonSight::azimuthDeg).orElse(null),
          rise.map(MoonSight::apparentAltitudeDeg).orElse(null),
          set.map(MoonSight::at).orElse(null),
          set.map(MoonSight::azimuthDeg).orElse(null),
          set.map(MoonSight::apparentAltitudeDeg).orElse(null));
    }
  }

  /**
   * @param crossings of the rig's own horizon, if one is entered
   */
  static PassView of(Pass pass, Optional<LineCrossings> crossings) {
    return new PassView(
        pass.riseAt().orElse(null),
        pass.culminationAt(),
        pass.setAt().orElse(null),
        pass.culminationAltitudeDeg(),
        pass.culminationApparentAltitudeDeg(),
        pass.rise().map(MoonSight::azimuthDeg).orElse(null),
        pass.culmination().azimuthDeg(),
        pass.set().map(MoonSight::azimuthDeg).orElse(null),
        orNull(pass.diameterAtRiseArcmin()),
        pass.diameterAtCulminationArcmin(),
        orNull(pass.diameterAtSetArcmin()),
        orNull(pass.predictedRatio()),
        pass.culmination().illuminatedFraction(),
        pass.culmination().sunSeparationDeg(),
        crossings.map(line -> OverLine.of(line.over(pass))).orElse(null));
  }

  private static @Nullable Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
