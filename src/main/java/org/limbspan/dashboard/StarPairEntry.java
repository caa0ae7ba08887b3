package org.limbspan.dashboard;

import static org.limbspan.dashboard.RigForm.text;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.NewCalibration;
import org.limbspan.rig.OnConflict;
import org.limbspan.rig.Rig;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.GreatCircle;
import org.limbspan.scale.StarPair;
import org.limbspan.scale.StarSeparation;
import org.limbspan.sky.Atmosphere;
import org.limbspan.sky.Sky;
import org.limbspan.sky.StarSight;

/** Reads a calibration by two stars from its form: the separation as seen, or what is wrong. */
final class StarPairEntry {

  private static final int LONGEST_NOTE = 1500;
  private static final double MOST_ARCMIN = 10_799;
  private static final double LEAST_ARCMIN = 0.05;
  private static final int DAY_LENGTH = 10;

  private final StarPairForm form;
  private final Rig rig;
  private final RigTime time;
  private final Sky sky;
  private final Map<String, String> complaints = new LinkedHashMap<>();

  private StarPairEntry(StarPairForm form, Rig rig, Sky sky) {
    this.form = form;
    this.rig = rig;
    this.time = new RigTime(rig.timeZone());
    this.sky = sky;
  }

  /**
   * What the form says.
   *
   * @param calibration empty if there are complaints
   * @param complaints by the name of the field
   */
  record Outcome(Optional<NewCalibration> calibration, Map<String, String> complaints) {}

  static Outcome read(StarPairForm form, Rig rig, Sky sky, Instant now) {
    StarPairEntry entry = new StarPairEntry(form, rig, sky);
    return new Outcome(entry.read(now), entry.complaints);
  }

  private Optional<NewCalibration> read(Instant now) {
    CalibrationForm.taken(complaints, "starTakenAt", form.starTakenAt(), time, now);
    Optional<Known> known = form.isTyped() ? typed() : computed();
    CalibrationForm.pair(
        complaints,
        "starMeasured",
        form.starMeasured(),
        form.starMeasuredUncertainty(),
        Double.MIN_VALUE);
    CalibrationForm.unit(complaints, "starMeasured", form.starMeasuredUnit());
    if (text(form.starNote()).length() > LONGEST_NOTE) {
      complaints.put("starNote", "Expected at most 1500 characters.");
    }
    return known.filter(each -> complaints.isEmpty()).map(this::calibration);
  }

  private NewCalibration calibration(Known known) {
    String note = text(form.starNote());
    return new NewCalibration(
        taken(),
        new Calibration(
            new StarPair(known.arcmin(), known.uncertaintyArcmin()),
            CalibrationForm.imageLength(
                form.starMeasured(), form.starMeasuredUncertainty(), form.starMeasuredUnit())),
        known.words().isEmpty() ? (note.isEmpty() ? null : note) : join(note, known.words()),
        OnConflict.REFUSE,
        null);
  }

  private static String join(String note, String words) {
    return note.isEmpty() ? words : note + (note.endsWith(".") ? " " : ". ") + words;
  }

  /** Of a separation that was typed: as seen, unless it is said where the pair stood. */
  private Optional<Known> typed() {
    CalibrationForm.pair(
        complaints, "separation", form.separation(), form.separationUncertainty(), 0);
    Optional<TypedAngle> unit = TypedAngle.ofSymbol(text(form.separationUnit()));
    if (unit.isEmpty()) {
      complaints.put("separation", "Expected one of the units offered.");
    }
    boolean corrected = !text(form.pairAltitude()).isEmpty() || !text(form.pairSlope()).isEmpty();
    OptionalDouble altitude = TypedNumber.of(text(form.pairAltitude()));
    OptionalDouble slope = TypedNumber.of(text(form.pairSlope()));
    if (corrected
        && !(altitude.orElse(-1) >= StarSeparation.LEAST_ALTITUDE_DEG
            && altitude.orElse(91) <= 90)) {
      complaints.put("pairAltitude", "Expected 5 to 90 degrees, or both of these left empty.");
    }
    if (corrected && !(slope.orElse(-1) >= 0 && slope.orElse(91) <= 90)) {
      complaints.put("pairSlope", "Expected 0 (level) to 90 degrees (upright).");
    }
    if (complaints.keySet().stream().anyMatch(field -> !field.startsWith("star"))) {
      return Optional.empty();
    }
    double arcmin = unit.orElseThrow().arcminutes(number(form.separation()));
    double uncertainty = unit.orElseThrow().arcminutes(number(form.separationUncertainty()));
    if (!isPossible("separation", arcmin)) {
      return Optional.empty();
    }
    return corrected
        ? lifted(arcmin, uncertainty, altitude.getAsDouble(), slope.getAsDouble())
        : Optional.of(new Known(arcmin, uncertainty, ""));
  }

  private Optional<Known> lifted(
      double arcmin, double uncertainty, double altitudeDeg, double slopeDeg) {
    double lowestDeg = altitudeDeg - arcmin / 120 * Math.sin(Math.toRadians(slopeDeg));
    if (lowestDeg < StarSeparation.LEAST_ALTITUDE_DEG + 0.01) {
      complaints.put("pairAltitude", "Expected a pair of which both stars stand 5 degrees high.");
      return Optional.empty();
    }
    StarSeparation separation =
        StarSeparation.at(
            arcmin, altitudeDeg, slopeDeg, Atmosphere.meanAt(rig.site().elevationM()));
    return Optional.of(
        Known.of(
            separation,
            uncertainty,
            "Middle at altitude "
                + text(form.pairAltitude())
                + "\u00b0, line at "
                + text(form.pairSlope())
                + "\u00b0 to the horizon: "));
  }

  /** Of a separation that is computed from the stars' places, the site and the time. */
  private Optional<Known> computed() {
    form.one().complain(complaints, "first");
    form.other().complain(complaints, "second");
    OptionalDouble doubt = TypedNumber.of(text(form.positionUncertainty()));
    if (!(doubt.orElse(-1) >= 0)) {
      complaints.put("positionUncertainty", "Expected arcseconds, 0 or more, such as 0.3.");
    }
    if (text(form.starTakenAt()).length() == DAY_LENGTH) {
      complaints.putIfAbsent(
          "starTakenAt", "Expected the time of day too: how high the stars stood follows from it.");
    }
    if (complaints.isEmpty() && !inEphemeris(taken())) {
      complaints.put(
          "starTakenAt",
          "Expected a time between "
              + time.shortDay(sky.ephemerisFrom())
              + " and "
              + time.shortDay(sky.ephemerisTo())
              + ".");
    }
    if (!complaints.isEmpty()) {
      return Optional.empty();
    }
    return seen(doubt.getAsDouble() / 60);
  }

  private Optional<Known> seen(double uncertaintyArcmin) {
    StarSight one = sky.starAt(taken(), rig.site(), form.one().star());
    StarSight other = sky.starAt(taken(), rig.site(), form.other().star());
    if (!isHighEnough("first", one) || !isHighEnough("second", other)) {
      return Optional.empty();
    }
    double apartDeg =
        GreatCircle.separationDeg(
            one.azimuthDeg(), one.altitudeDeg(), other.azimuthDeg(), other.altitudeDeg());
    if (!isPossible("second.rightAscension", 60 * apartDeg)) {
      return Optional.empty();
    }
    StarSeparation separation = StarSeparation.of(one, other);
    if (uncertaintyArcmin >= separation.asSeenArcmin()) {
      complaints.put("positionUncertainty", "Expected less than the separation itself.");
      return Optional.empty();
    }
    String words =
        "Stars (J2000) "
            + form.one().words()
            + " and "
            + form.other().words()
            + ", at altitudes "
            + Typeset.places(one.apparentAltitudeDeg(), 1)
            + "\u00b0 and "
            + Typeset.places(other.apparentAltitudeDeg(), 1)
            + "\u00b0: ";
    return Optional.of(Known.of(separation, uncertaintyArcmin, words));
  }

  private boolean isHighEnough(String name, StarSight star) {
    boolean high = star.altitudeDeg() >= StarSeparation.LEAST_ALTITUDE_DEG;
    if (!high) {
      complaints.put(
          name + ".rightAscension",
          "At that time this star stood at "
              + Typeset.places(star.altitudeDeg(), 1)
              + "\u00b0 over the horizon of the rig. Expected 5\u00b0 or higher: is the time right,"
              + " and the place in the sky?");
    }
    return high;
  }

  private boolean isPossible(String field, double arcmin) {
    boolean possible = arcmin >= LEAST_ARCMIN && arcmin <= MOST_ARCMIN;
    if (!possible) {
      complaints.put(
          field,
          "The separation is "
              + Typeset.places(arcmin * 60, 1)
              + "\u2033. Expected at least 3\u2033 and less than half a turn.");
    }
    return possible;
  }

  private boolean inEphemeris(Instant at) {
    return !at.isBefore(sky.ephemerisFrom()) && at.isBefore(sky.ephemerisTo());
  }

  private Instant taken() {
    return time.instant(text(form.starTakenAt())).orElseThrow();
  }

  private static double number(@Nullable String typed) {
    return TypedNumber.of(text(typed)).orElseThrow();
  }

  /** A separation as seen, its standard uncertainty, and how it came about. */
  private record Known(double arcmin, double uncertaintyArcmin, String words) {

    static Known of(StarSeparation separation, double uncertaintyArcmin, String words) {
      return new Known(
          separation.asSeenArcmin(),
          Math.hypot(uncertaintyArcmin, separation.airUncertaintyArcmin()),
          words
              + Typeset.places(separation.withoutAirArcmin(), 4)
              + "\u2032 without air, "
              + Typeset.places(separation.asSeenArcmin(), 4)
              + "\u2032 as seen.");
    }
  }
}
