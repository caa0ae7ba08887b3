package org.limbspan.drift;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.limbspan.cycle.Observation;
import org.limbspan.sky.SkyFixture;

class JudgePropertyTest {

  private final Judge judge = new Judge(SkyFixture.sky());

  @ParameterizedTest
  @ValueSource(
      strings = {
        "clean-pairs",
        "declared-change",
        "step-0.5",
        "drift-0.1",
        "scatter-x3",
        "calibration-at-49m",
        "vertical-as-horizontal",
        "local-time-as-utc",
        "near-moon-world"
      })
  void careNeitherForOrderNorForRepetition(String folder) {
    RigHistory rig = SimulatedHistory.of(folder).rig();
    List<Finding> findings = judge.judge(rig);
    for (int seed = 0; seed < 3; seed++) {
      assertThat(judge.judge(shuffled(rig, new Random(seed)))).isEqualTo(findings);
    }
  }

  /** What is known when the first n facts have come, judged at once and judged as they came. */
  @ParameterizedTest
  @ValueSource(strings = {"step-0.5", "local-time-as-utc", "declared-change", "scatter-x3"})
  void goesOnAsIfItHadBeganAnew(String folder) {
    RigHistory rig = SimulatedHistory.of(folder).rig();
    RunningJudge running = new RunningJudge(SkyFixture.sky());
    int count = readings(rig).size();
    for (int n = 1; n <= count; n += 7) {
      RigHistory known = firstReadings(rig, n);
      assertThat(running.judge(known)).isEqualTo(judge.judge(known));
    }
    assertThat(running.judge(rig)).isEqualTo(judge.judge(rig));
  }

  @Test
  void takesUpReadingsThatComeLateOrAreCorrectedOrWithdrawn() {
    RigHistory rig = SimulatedHistory.of("step-minus-1").rig();
    List<Observation> readings = readings(rig);
    RunningJudge running = new RunningJudge(SkyFixture.sky());
    Random random = new Random(11);
    List<Observation> known = new ArrayList<>();
    List<Observation> waiting = new ArrayList<>(readings);
    Collections.shuffle(waiting, random);
    while (!waiting.isEmpty()) {
      int batch = Math.min(waiting.size(), 1 + random.nextInt(20));
      known.addAll(waiting.subList(0, batch));
      waiting.subList(0, batch).clear();
      if (random.nextInt(4) == 0) {
        waiting.add(known.remove(random.nextInt(known.size())));
      }
      List<Observation> asFirstEntered = new ArrayList<>(known);
      int wrong = random.nextInt(known.size());
      asFirstEntered.set(wrong, wide(known.get(wrong), 0.95 + 0.1 * random.nextDouble()));
      running.judge(withReadings(rig, asFirstEntered));
      RigHistory so = withReadings(rig, known);
      assertThat(running.judge(so)).isEqualTo(judge.judge(so));
    }
    assertThat(running.judge(rig)).isEqualTo(judge.judge(rig)).hasSize(1);
  }

  private static Observation wide(Observation reading, double factor) {
    return new Observation(
        reading.takenAt(),
        reading.axis(),
        reading.observedArcmin() * factor,
        reading.relativeUncertainty(),
        reading.sight(),
        reading.setup(),
        reading.sighted());
  }

  /** The evidence of a finding that stands is dated by what was known then. */
  @Test
  void findsTheStepOnceTheEvidenceIsThere() {
    RigHistory rig = SimulatedHistory.of("step-0.5").rig();
    Instant evidenceAt = judge.judge(rig).get(0).evidenceAt();
    List<Observation> readings = readings(rig);
    List<Observation> then =
        readings.stream().filter(each -> !each.takenAt().isAfter(evidenceAt)).toList();
    List<Observation> before =
        readings.stream().filter(each -> each.takenAt().isBefore(evidenceAt)).toList();
    assertThat(judge.judge(withReadings(rig, then)))
        .extracting(Finding::evidenceAt)
        .containsExactly(evidenceAt);
    assertThat(judge.judge(withReadings(rig, before))).isEmpty();
  }

  private static List<Observation> readings(RigHistory rig) {
    return rig.setups().stream().flatMap(setup -> setup.observations().stream()).toList();
  }

  private static RigHistory firstReadings(RigHistory rig, int n) {
    return withReadings(rig, readings(rig).subList(0, n));
  }

  private static RigHistory withReadings(RigHistory rig, List<Observation> readings) {
    return new RigHistory(
        rig.site(),
        rig.zone(),
        rig.setups().stream()
            .map(
                setup ->
                    new SetupHistory(
                        setup.number(),
                        setup.from(),
                        setup.to(),
                        setup.calibrations(),
                        readings.stream().filter(r -> r.setup() == setup.number()).toList()))
            .toList());
  }

  private static RigHistory shuffled(RigHistory rig, Random random) {
    List<SetupHistory> setups = new ArrayList<>();
    for (SetupHistory setup : rig.setups()) {
      List<Observation> observations = new ArrayList<>(setup.observations());
      observations.addAll(setup.observations().subList(0, setup.observations().size() / 3));
      Collections.shuffle(observations, random);
      List<CalibrationPoint> calibrations = new ArrayList<>(setup.calibrations());
      calibrations.addAll(setup.calibrations());
      Collections.shuffle(calibrations, random);
      setups.add(
          new SetupHistory(setup.number(), setup.from(), setup.to(), calibrations, observations));
    }
    Collections.shuffle(setups, random);
    return new RigHistory(rig.site(), rig.zone(), setups);
  }
}
