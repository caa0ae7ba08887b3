package org.limbspan.rig;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.limbspan.scale.Calibration;
import org.limbspan.scale.ImageLength;
import org.limbspan.scale.LengthUnit;
import org.limbspan.scale.Reference;
import org.limbspan.scale.StarPair;
import org.limbspan.scale.Target;

@Entity
@Immutable
@Table(name = "calibration")
class CalibrationEntity {

  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  private @Nullable Long id;

  @SuppressWarnings("UnusedVariable") // a column, for queries
  private long rigId;

  private Instant takenAt;
  private String method;
  private int version;
  private @Nullable Double targetLengthMm;
  private @Nullable Double targetLengthUncertaintyMm;

  @Column(name = "target_distance_m")
  private @Nullable Double targetDistanceM;

  @Column(name = "target_distance_uncertainty_m")
  private @Nullable Double targetDistanceUncertaintyM;

  private @Nullable Double separationArcmin;
  private @Nullable Double separationUncertaintyArcmin;
  private double measured;
  private double measuredUncertainty;
  private String unit;
  private @Nullable String note;
  private Instant enteredAt;

  /** Only for the object mapper, which fills every field. */
  @SuppressWarnings("NullAway.Init")
  protected CalibrationEntity() {}

  CalibrationEntity(long rigId, NewCalibration fact, int version, Instant enteredAt) {
    Calibration calibration = fact.calibration();
    this.rigId = rigId;
    this.takenAt = fact.takenAt();
    this.method = CalibrationMethod.of(calibration).label();
    this.version = version;
    if (calibration.reference() instanceof Target target) {
      this.targetLengthMm = target.lengthMm();
      this.targetLengthUncertaintyMm = target.lengthUncertaintyMm();
      this.targetDistanceM = target.distanceM();
      this.targetDistanceUncertaintyM = target.distanceUncertaintyM();
    } else if (calibration.reference() instanceof StarPair pair) {
      this.separationArcmin = pair.separationArcmin();
      this.separationUncertaintyArcmin = pair.separationUncertaintyArcmin();
    }
    this.measured = calibration.measured().value();
    this.measuredUncertainty = calibration.measured().uncertainty();
    this.unit = calibration.measured().unit().symbol();
    this.note = fact.note();
    this.enteredAt = enteredAt;
  }

  long id() {
    return Ids.of(id);
  }

  int version() {
    return version;
  }

  CalibrationKey key() {
    return new CalibrationKey(takenAt, separationArcmin);
  }

  Calibration calibration() {
    return new Calibration(
        reference(), new ImageLength(measured, measuredUncertainty, LengthUnit.ofSymbol(unit)));
  }

  RecordedCalibration toRecord(int setup) {
    return new RecordedCalibration(id(), takenAt, setup, calibration(), note, enteredAt);
  }

  Instant takenAt() {
    return takenAt;
  }

  private Reference reference() {
    return switch (CalibrationMethod.ofLabel(method)) {
      case TARGET ->
          new Target(
              stored(targetLengthMm),
              stored(targetLengthUncertaintyMm),
              stored(targetDistanceM),
              stored(targetDistanceUncertaintyM));
      case STAR_PAIR -> new StarPair(stored(separationArcmin), stored(separationUncertaintyArcmin));
    };
  }

  private static double stored(@Nullable Double value) {
    return Objects.requireNonNull(value, "the table's checks let no such calibration in");
  }
}
