package org.limbspan.demo;

import java.util.random.RandomGenerator;

/** Invented skies: clear and clouded spells of some nights each. */
final class DemoWeather {

  private static final double STAYS_CLEAR = 0.72;
  private static final double STAYS_CLOUDED = 0.68;

  private final RandomGenerator random;
  private boolean clear = true;

  DemoWeather(RandomGenerator random) {
    this.random = random;
  }

  boolean nextNightIsClear() {
    double stays = clear ? STAYS_CLEAR : STAYS_CLOUDED;
    if (random.nextDouble() >= stays) {
      clear = !clear;
    }
    return clear;
  }

  String describe() {
    return switch (random.nextInt(4)) {
      case 0 -> "clear, steady";
      case 1 -> "clear, some seeing";
      case 2 -> "thin haze";
      default -> "clear";
    };
  }
}
