package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.limbspan.dashboard.InstrumentSheet.Budget;
import org.limbspan.dashboard.InstrumentSheet.Part;
import org.limbspan.dashboard.InstrumentSheet.Plan;
import org.limbspan.rig.RecordedCalibration;
import org.limbspan.scale.CalibrationPlan;
import org.limbspan.scale.Measured;
import org.limbspan.scale.Target;

/**
 * The uncertainty budget of one diameter, as annex H of the GUM lays its examples out, and what
 * another calibration would buy.
 */
final class BudgetTable {

  /** The Moon at its mean distance, seen from the Earth's centre: 2 asin(1737.4 / 384400). */
  private static final double MEAN_DIAMETER_ARCMIN = 31.08;

  private final CalibrationPlan plan;
  private final double reading;

  private BudgetTable(CalibrationPlan plan, double reading) {
    this.plan = plan;
    this.reading = reading;
  }

  /**
   * The budget of the setup of {@code calibrations}.
   *
   * @param calibrations of one setup, oldest first; the last one counts, and how many are like it
   * @param reading relative standard uncertainty of one reading of the Moon
   * @return empty where the last is not of a target
   */
  static Optional<Budget> of(List<RecordedCalibration> calibrations, double reading) {
    if (calibrations.isEmpty()) {
      return Optional.empty();
    }
    RecordedCalibration last = calibrations.get(calibrations.size() - 1);
    if (!(last.calibration().reference() instanceof Target target)) {
      return Optional.empty();
    }
    int alike =
        (int)
            calibrations.stream()
                .filter(each -> each.calibration().reference().equals(target))
                .count();
    CalibrationPlan plan = new CalibrationPlan(target, last.calibration().measured(), 1, alike);
    return Optional.of(new BudgetTable(plan, reading).budget());
  }

  private Budget budget() {
    return new Budget(
        "One diameter of the Moon at the scale of the latest calibration"
            + (plan.photographs() > 1
                ? " and the " + (plan.photographs() - 1) + " more of the same target"
                : "")
            + ": standard uncertainties, k = 1.",
        parts(),
        sums(),
        limit(),
        plans());
  }

  private List<Part> parts() {
    Target target = plan.target();
    String unit = " " + plan.measured().unit().symbol();
    return List.of(
        part(
            "length of the target",
            new Measured(target.lengthMm(), target.lengthUncertaintyMm()),
            " mm",
            "+1",
            plan.fromLength()),
        part(
            "its distance",
            new Measured(target.distanceM(), target.distanceUncertaintyM()),
            " m",
            "\u22121",
            plan.fromDistance()),
        part(
            plan.photographs() > 1 ? "its image, mean of " + plan.photographs() : "its image",
            new Measured(plan.measured().value(), plan.fromImages() * plan.measured().value()),
            unit,
            "\u22121",
            plan.fromImages()),
        part(
            "image of the Moon, one reading",
            new Measured(moonLength(), reading * moonLength()),
            unit,
            "+1",
            reading));
  }

  private double moonLength() {
    return MEAN_DIAMETER_ARCMIN * 60 / plan.target().angleArcsec() * plan.measured().value();
  }

  private static Part part(
      String quantity, Measured measured, String unit, String sensitivity, double relative) {
    return new Part(
        quantity,
        measured.valueText() + unit,
        measured.uncertaintyText() + unit,
        sensitivity,
        percent(relative));
  }

  private List<Part> sums() {
    double both = Math.hypot(plan.combined(), reading);
    return List.of(
        new Part("plate scale", "", "", "", percent(plan.combined())),
        new Part("one diameter", "", arcmin(both), "", percent(both)),
        new Part("one diameter, k = 2", "", arcmin(2 * both), "", percent(2 * both)));
  }

  private static String arcmin(double relative) {
    return new Measured(MEAN_DIAMETER_ARCMIN, relative * MEAN_DIAMETER_ARCMIN).uncertaintyText()
        + "\u2032 of 31.08\u2032";
  }

  private String limit() {
    Map<String, Double> parts = new LinkedHashMap<>();
    parts.put("the length of the target", plan.fromLength());
    parts.put("the distance of the target", plan.fromDistance());
    parts.put("measuring the target in its image", plan.fromImages());
    String scale =
        parts.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
    return "What limits the plate scale most is "
        + scale
        + (reading > plan.combined()
            ? "; but a single reading of the Moon is less certain than the scale, and more readings"
                + " gain more than another calibration."
            : ".");
  }

  private List<Plan> plans() {
    List<Plan> plans = new ArrayList<>();
    plans.add(plan("as it is", plan));
    plans.add(plan("one more tape reading of the distance", plan.withMoreTapeReadings(1)));
    plans.add(plan("three more photographs of the target", plan.withMorePhotographs(3)));
    plans.add(plan("the target half as far away", plan.atTimesTheDistance(0.5)));
    plans.add(plan("the target twice as far away", plan.atTimesTheDistance(2)));
    plans.add(plan("a target twice as long, as far away", plan.withTimesTheLength(2)));
    plans.add(
        plan(
            "a target twice as long, twice as far away",
            plan.withTimesTheLength(2).atTimesTheDistance(2)));
    return plans;
  }

  private Plan plan(String words, CalibrationPlan other) {
    return new Plan(
        words, percent(other.combined()), percent(Math.hypot(other.combined(), reading)));
  }

  /** Two digits, as the GUM has it for uncertainties. */
  private static String percent(double relative) {
    return new Measured(100 * relative, 100 * relative).uncertaintyText();
  }
}
