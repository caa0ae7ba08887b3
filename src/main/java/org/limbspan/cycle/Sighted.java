package org.limbspan.cycle;

import java.util.OptionalDouble;

/** What the observer sighted; never used in place of the computed position. Degrees. */
public record Sighted(OptionalDouble altitudeDeg, OptionalDouble azimuthDeg) {

  /** Nothing was sighted. */
  public static final Sighted NONE = new Sighted(OptionalDouble.empty(), OptionalDouble.empty());
}
