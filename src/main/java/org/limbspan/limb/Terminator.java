package org.limbspan.limb;

/**
 * How far the edge that is seen lies inside the limb on the dark side of a Moon more than half lit,
 * as the phase law has it.
 */
interface Terminator {

  /** Standard uncertainty of the Sun's direction found from the photograph alone. */
  double TURN_DOUBT_RAD = Math.toRadians(12);

  /** Nowhere near the limb that is used. */
  Terminator FAR =
      new Terminator() {
        @Override
        public double hidden(double angleRad) {
          return 0;
        }

        @Override
        public double hiddenByTurn(double angleRad) {
          return 0;
        }

        @Override
        public double roughness(double angleRad) {
          return 0;
        }

        @Override
        public double doubt() {
          return 1;
        }

        @Override
        public double turnDoubtRad() {
          return TURN_DOUBT_RAD;
        }

        @Override
        public boolean isExpected() {
          return false;
        }

        @Override
        public double excess() {
          return 0;
        }
      };

  /** Width of the dark strip between the half level and the limb, pixels. */
  double hidden(double angleRad);

  /** Its change for a turn of the Sun's direction, pixels a radian. */
  double hiddenByTurn(double angleRad);

  /** Standard error of a sector's place by uneven ground beside the terminator, pixels. */
  double roughness(double angleRad);

  /** Relative standard uncertainty of the strip's width, 0.2 to 1. */
  double doubt();

  /** By how much the Sun has been turned from the computed direction, radians. */
  default double turnRad() {
    return 0;
  }

  /** Standard uncertainty of the Sun's direction, radians. */
  double turnDoubtRad();

  /** Whether it lies where the computed phase has it. */
  boolean isExpected();

  /** By what share of itself the strip is expected to be narrower than stated, 0 to 1. */
  double excess();
}
