package org.limbspan.dashboard;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.HorizonLine.Point;

/**
 * What the log page needs to compare a reading with the computed Moon by itself: the Moon over the
 * rig in even steps, the setups with their plate scale, and the readings of those days. Instants
 * are seconds of the epoch.
 *
 * @param fromS instant of the first row
 * @param stepS seconds from row to row
 * @param altitudeDeg without refraction
 * @param apparentAltitudeDeg with refraction
 * @param pass number of the pass that each row belongs to
 * @param horizon the rig's own horizon by azimuth; empty if none stands
 */
record LogAlmanac(
    long fromS,
    long stepS,
    List<Double> altitudeDeg,
    List<Double> apparentAltitudeDeg,
    List<Double> azimuthDeg,
    List<Double> horizontalArcmin,
    List<Double> verticalArcmin,
    List<Double> sunAltitudeDeg,
    List<Double> sunSeparationDeg,
    List<Long> pass,
    List<Point> horizon,
    List<InForce> setups,
    List<Held> readings) {

  /**
   * A setup.
   *
   * @param fromS its start; absent for the first, open from the beginning
   * @param unit {@code px} or {@code mm}, absent without a calibration
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record InForce(
      int number,
      @Nullable Long fromS,
      @Nullable String unit,
      @Nullable Double arcsecPerUnit,
      @Nullable Double relativeUncertainty) {}

  /**
   * A reading that the ledger holds.
   *
   * @param relativeUncertainty without the part of the plate scale
   */
  record Held(
      long atS,
      String axis,
      int setup,
      long pass,
      double apparentAltitudeDeg,
      double observedArcmin,
      double predictedArcmin,
      double relativeUncertainty) {}
}
