package org.limbspan.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class HarmonicModelTest {

  @Test
  void columnsAreTheDerivatives() {
    RigSimulator rig = new RigSimulator(11);
    List<Observation> observations = rig.pairs(0.5);
    Series series = Series.of(observations, rig.site());
    HarmonicModel model =
        new HarmonicModel(
            series.daysSince(rig.start()),
            LunarLines.LINES,
            1,
            ParallaxLaw.of(series.observations(), rig.site(), AltitudeSource.COMPUTED));
    double[] at = new double[model.parameterCount()];
    at[0] = 1 / 27.5;
    at[1] = 1 / 60.0;
    for (int j = 2; j < at.length; j++) {
      at[j] = 0.05 / j;
    }
    double[][] columns = model.at(at).columns();
    for (int j = 0; j < at.length; j++) {
      double step = j == 0 ? 1e-8 : 1e-6;
      double[] above = at.clone();
      double[] below = at.clone();
      above[j] += step;
      below[j] -= step;
      double[] high = model.at(above).values();
      double[] low = model.at(below).values();
      for (int i = 0; i < series.size(); i++) {
        double slope = (high[i] - low[i]) / (2 * step);
        assertThat(columns[j][i]).as("parameter %d", j).isCloseTo(slope, within(1e-4));
      }
    }
  }
}
