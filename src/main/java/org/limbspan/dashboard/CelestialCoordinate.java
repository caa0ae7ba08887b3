package org.limbspan.dashboard;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Right ascension and declination as people and catalogues write them. */
final class CelestialCoordinate {

  private static final Pattern NUMBER = Pattern.compile("\\d{1,3}(?:\\.\\d{0,12})?");
  private static final Pattern BETWEEN_HOURS =
      Pattern.compile("[\\s:hms\u02b0\u1d50\u02e2'\u2019\u2032\"\u201d\u2033]*");
  private static final Pattern BETWEEN_DEGREES = Pattern.compile("[\\s\u00b0\u00ba]*");

  private CelestialCoordinate() {}

  /**
   * Degrees, 0 to 360, from hours with minutes and seconds ({@code 13h 25m 11.6s}, {@code 13 25
   * 11.6}, {@code 13:25:11.6}, {@code 13.42h}) or from decimal degrees ({@code 201.2983}). Empty if
   * it is neither or out of range.
   */
  static Optional<Double> rightAscensionDeg(String text) {
    String plain = text.strip().toLowerCase(Locale.ROOT).replace(',', '.');
    List<String> numbers = NUMBER.matcher(plain).results().map(MatchResult::group).toList();
    String rest = NUMBER.matcher(plain).replaceAll("");
    boolean hours = numbers.size() > 1 || rest.contains("h") || rest.contains("\u02b0");
    Pattern between = hours ? BETWEEN_HOURS : BETWEEN_DEGREES;
    if (numbers.isEmpty() || numbers.size() > 3 || !between.matcher(rest).matches()) {
      return Optional.empty();
    }
    double sum = 0;
    double unit = hours ? 15 : 1;
    for (int i = 0; i < numbers.size(); i++) {
      double number = Double.parseDouble(numbers.get(i));
      boolean last = i == numbers.size() - 1;
      if ((i > 0 && number >= 60) || (!last && numbers.get(i).contains("."))) {
        return Optional.empty();
      }
      sum += number * unit;
      unit /= 60;
    }
    return Optional.of(sum).filter(degrees -> degrees < 360);
  }

  /**
   * Degrees, -90 to 90, from decimal degrees or degrees with minutes and seconds: {@code -11.1614},
   * {@code −11° 09′ 41″}, {@code -11:09:41}, {@code +19d10m57s}.
   */
  static Optional<Double> declinationDeg(String text) {
    String plain =
        text.strip().toLowerCase(Locale.ROOT).replaceAll("[:d]", " ").replaceAll("[ms]", " ");
    return plain.matches(".*[a-z].*") ? Optional.empty() : Coordinate.LATITUDE.degrees(plain);
  }
}
