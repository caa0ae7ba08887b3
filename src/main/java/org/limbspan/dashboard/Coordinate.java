package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Latitude and longitude as people write them. */
enum Coordinate {
  LATITUDE('N', 'S', 90),
  LONGITUDE('E', 'W', 180);

  private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");
  private static final Pattern SIGN = Pattern.compile("^[+-]");
  private static final String BETWEEN = "[\\s\u00b0\u00ba'\u2018\u2019\u2032\"\u201c\u201d\u2033]*";

  private final char positive;
  private final char negative;
  private final double limit;

  Coordinate(char positive, char negative, double limit) {
    this.positive = positive;
    this.negative = negative;
    this.limit = limit;
  }

  /**
   * Degrees from decimal degrees, or degrees with minutes and seconds, with a sign or the letter of
   * the direction: {@code -4.0817}, {@code 4,0817 W}, {@code 4° 04′ 54″ W}. Empty if it is none of
   * these or out of range.
   */
  Optional<Double> degrees(String text) {
    String plain = text.strip().toUpperCase(Locale.ROOT).replace('\u2212', '-').replace(',', '.');
    Matcher sign = SIGN.matcher(plain);
    boolean signed = sign.find();
    boolean minus = signed && plain.charAt(0) == '-';
    String rest = signed ? plain.substring(1) : plain;
    Optional<Character> direction = direction(rest);
    if (direction.isPresent()) {
      rest = rest.replaceFirst(direction.get().toString(), " ");
    }
    if ((signed && direction.isPresent())
        || !NUMBER.matcher(rest).replaceAll("").matches(BETWEEN)) {
      return Optional.empty();
    }
    boolean below = minus || direction.filter(letter -> letter == negative).isPresent();
    return magnitude(rest).filter(d -> d <= limit).map(d -> below && d != 0 ? -d : d);
  }

  /** Degrees, with minutes and with seconds where they follow; the last alone may have decimals. */
  private static Optional<Double> magnitude(String text) {
    List<String> numbers = new ArrayList<>();
    Matcher matcher = NUMBER.matcher(text);
    while (matcher.find()) {
      numbers.add(matcher.group());
    }
    double degrees = 0;
    double unit = 1;
    for (int i = 0; i < numbers.size(); i++) {
      double number = Double.parseDouble(numbers.get(i));
      boolean last = i == numbers.size() - 1;
      if ((i > 0 && number >= 60) || (!last && numbers.get(i).contains("."))) {
        return Optional.empty();
      }
      degrees += number * unit;
      unit /= 60;
    }
    return numbers.isEmpty() || numbers.size() > 3 ? Optional.empty() : Optional.of(degrees);
  }

  private Optional<Character> direction(String text) {
    char first = text.isEmpty() ? ' ' : text.charAt(0);
    char last = text.isEmpty() ? ' ' : text.charAt(text.length() - 1);
    return List.of(first, last).stream().filter(c -> c == positive || c == negative).findFirst();
  }

  /** Degrees and decimal minutes with the letter: {@code 28° 07.4′ N}. */
  String words(double degrees) {
    long tenths = Math.round(Math.abs(degrees) * 600);
    return String.format(
        Locale.ROOT,
        "%d\u00b0\u00a0%02d.%d\u2032\u00a0%c",
        tenths / 600,
        tenths % 600 / 10,
        tenths % 10,
        degrees < 0 ? negative : positive);
  }
}
