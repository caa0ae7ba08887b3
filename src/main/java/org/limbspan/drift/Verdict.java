package org.limbspan.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Which kind of change explains best, and how likely the causes are. */
record Verdict(AlertKind kind, double probability, List<LikelyCause> causes) {

  private static final double LEAST = 0.005;

  static Verdict of(Masses masses) {
    Map<AlertKind, Double> kinds = new EnumMap<>(AlertKind.class);
    Map<Cause, Double> causes = new EnumMap<>(Cause.class);
    for (Change each : Change.values()) {
      double probability = masses.probability(each);
      each.kind().ifPresent(kind -> kinds.merge(kind, probability, Double::sum));
      if (each.kind().isPresent()) {
        causes.merge(causeOf(each), probability, Double::sum);
      }
    }
    double chance = masses.chance();
    causes.put(Cause.CHANCE, chance);
    AlertKind best =
        kinds.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
    List<LikelyCause> likely = new ArrayList<>();
    causes.forEach(
        (cause, probability) -> {
          if (probability >= LEAST) {
            likely.add(new LikelyCause(cause, Math.min(1, probability)));
          }
        });
    likely.sort(Comparator.comparingDouble(LikelyCause::probability).reversed());
    return new Verdict(best, 1 - chance, likely);
  }

  private static Cause causeOf(Change change) {
    return switch (change) {
      case STEP -> Cause.ZOOM_MOVED;
      case DRIFT -> Cause.ZOOM_CREEPING;
      case SCATTER -> Cause.SHARPNESS_LOST;
      case CALIBRATION -> Cause.CALIBRATION_WRONG;
      case TARGET -> Cause.TARGET_WRONG;
      case AXIS -> Cause.AXIS_MISLABELLED;
      case FLATTENING -> Cause.REFRACTION_WRONG;
      case CLOCK -> Cause.CLOCK_WRONG;
      case SWING, RATIO -> Cause.MEASURING_NOT_LINEAR;
      case NEAR_MOON -> Cause.NEAR_MOON;
      case NONE, DRIFT_END, SCATTER_END, CLOCK_END -> Cause.CHANCE;
    };
  }
}
