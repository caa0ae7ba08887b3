package org.limbspan.reading;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.limbspan.rig.Predicted;

/** The columns of an export: as entered, then what is derived. */
final class ReadingCsv {

  private static final Map<String, Function<AnnotatedReading, @Nullable Object>> COLUMNS =
      columns();

  private ReadingCsv() {}

  static List<String> header() {
    return List.copyOf(COLUMNS.keySet());
  }

  static List<String> row(AnnotatedReading reading) {
    return COLUMNS.values().stream()
        .map(column -> column.apply(reading))
        .map(value -> value == null ? "" : value.toString())
        .toList();
  }

  private static Map<String, Function<AnnotatedReading, @Nullable Object>> columns() {
    Map<String, Function<AnnotatedReading, @Nullable Object>> columns = new LinkedHashMap<>();
    columns.put("id", each -> each.reading().id());
    columns.put("taken_at", each -> each.reading().takenAt());
    columns.put("axis", each -> each.reading().axis().label());
    for (DiameterUnit unit : List.of(DiameterUnit.PIXEL, DiameterUnit.MILLIMETRE)) {
      columns.put("diameter_" + unit.symbol(), in(unit, Diameter::value));
      columns.put("uncertainty_" + unit.symbol(), in(unit, Diameter::uncertainty));
    }
    columns.put("diameter_arcmin", standardised(StandardisedReading::diameterArcmin));
    columns.put("uncertainty_arcmin", standardised(StandardisedReading::uncertaintyArcmin));
    columns.put("frames", each -> frames(each.reading().frames()));
    columns.put("altitude_deg", told(Circumstances::altitudeDeg));
    columns.put("azimuth_deg", told(Circumstances::azimuthDeg));
    columns.put("exposure_s", told(Circumstances::exposureS));
    columns.put("iso", told(Circumstances::iso));
    columns.put("f_number", told(Circumstances::fNumber));
    columns.put("sky", told(Circumstances::sky));
    columns.put("note", told(Circumstances::note));
    columns.put("setup", AnnotatedReading::setup);
    columns.put("predicted_geocentric_distance_km", predicted(Predicted::geocentricDistanceKm));
    columns.put("predicted_topocentric_distance_km", predicted(Predicted::topocentricDistanceKm));
    columns.put("predicted_diameter_arcmin", predicted(Predicted::diameterArcmin));
    columns.put("predicted_altitude_deg", predicted(Predicted::altitudeDeg));
    columns.put("predicted_apparent_altitude_deg", predicted(Predicted::apparentAltitudeDeg));
    columns.put("predicted_azimuth_deg", predicted(Predicted::azimuthDeg));
    columns.put("predicted_illuminated_fraction", predicted(Predicted::illuminatedFraction));
    columns.put("predicted_sun_separation_deg", predicted(Predicted::sunSeparationDeg));
    columns.put("predicted_days_from_perigee", predicted(Predicted::daysFromPerigee));
    columns.put("residual_percent", standardised(StandardisedReading::residualPercent));
    columns.put(
        "residual_uncertainty_percent",
        standardised(StandardisedReading::residualUncertaintyPercent));
    columns.put("remarks", each -> String.join(" ", each.remarks()));
    return columns;
  }

  private static Function<AnnotatedReading, @Nullable Object> in(
      DiameterUnit unit, Function<Diameter, Double> part) {
    return each ->
        each.reading().diameter().unit() == unit ? part.apply(each.reading().diameter()) : null;
  }

  private static Function<AnnotatedReading, @Nullable Object> told(
      Function<Circumstances, @Nullable Object> part) {
    return each -> part.apply(each.reading().circumstances());
  }

  private static Function<AnnotatedReading, @Nullable Object> predicted(
      Function<Predicted, Double> part) {
    return each -> part.apply(each.predicted());
  }

  private static Function<AnnotatedReading, @Nullable Object> standardised(
      Function<StandardisedReading, Double> part) {
    return each -> {
      Optional<StandardisedReading> standardised = each.standardised();
      return standardised.isEmpty() ? null : part.apply(standardised.get());
    };
  }

  private static String frames(List<Double> frames) {
    return frames.stream().map(String::valueOf).collect(Collectors.joining(" "));
  }
}
