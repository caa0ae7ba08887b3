package org.limbspan.drift;

import org.limbspan.cycle.Observation;
import org.limbspan.sky.Axis;

/** Takes readings that are logged along one axis for readings along another. */
record AxisLens(Axis logged, Axis measured) implements Lens {

  @Override
  public double offset(Fact fact) {
    if (fact.observation.isEmpty()) {
      return 0;
    }
    Observation reading = fact.observation.get();
    if (reading.axis() != logged) {
      return 0;
    }
    return Math.log(
        reading.sight().diameterArcmin(measured) / reading.sight().diameterArcmin(logged));
  }
}
