package org.limbspan.rig;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.MoonSight;
import org.limbspan.sky.Pass;

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
    double sunSeparationDeg) {

  static PassView of(Pass pass) {
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
        pass.culmination().sunSeparationDeg());
  }

  private static @Nullable Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }
}
