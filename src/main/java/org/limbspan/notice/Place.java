package org.limbspan.notice;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.limbspan.sky.ShootingPlan;
import org.limbspan.sky.ShootingWindow;

/** Where in its pass the Moon is photographed. */
public enum Place {
  LOW("low"),
  HIGH("high");

  private final String label;

  Place(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }

  /** Both by label. */
  public static Map<String, Place> byLabel() {
    Map<String, Place> places = new LinkedHashMap<>();
    Arrays.stream(values()).forEach(place -> places.put(place.label, place));
    return Collections.unmodifiableMap(places);
  }

  static Place ofLabel(String label) {
    return Arrays.stream(values())
        .filter(place -> place.label.equals(label))
        .findFirst()
        .orElseThrow();
  }

  /** The window that a pass offers there. */
  Optional<ShootingWindow> of(ShootingPlan plan) {
    return this == LOW ? plan.low() : plan.high();
  }
}
