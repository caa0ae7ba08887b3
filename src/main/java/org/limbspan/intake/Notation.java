package org.limbspan.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** How a client writes names and values. Inside, names are as in JSON: {@code diameterPx}. */
enum Notation {
  JSON,
  /** CSV with a decimal point. */
  CSV,
  /** CSV whose separator is not the comma, so that a decimal comma can be told from it. */
  CSV_WITH_DECIMAL_COMMA;

  /** The name as the client writes it: {@code diameter_px} in CSV. */
  String written(String name) {
    if (this == JSON) {
      return name;
    }
    StringBuilder column = new StringBuilder();
    for (int i = 0; i < name.length(); i++) {
      char letter = name.charAt(i);
      if (Character.isUpperCase(letter)) {
        column.append('_');
      }
      column.append(Character.toLowerCase(letter));
    }
    return column.toString();
  }

  /** The inner name of a column: {@code f_number} is {@code fNumber}. */
  static String nameOfColumn(String column) {
    String[] words = column.strip().toLowerCase(Locale.ROOT).split("_", -1);
    StringBuilder name = new StringBuilder(words[0]);
    for (int i = 1; i < words.length; i++) {
      if (!words[i].isEmpty()) {
        name.append(Character.toUpperCase(words[i].charAt(0))).append(words[i].substring(1));
      }
    }
    return name.toString();
  }

  /** The finite number that was sent; empty if it is none. */
  OptionalDouble number(Object value) {
    if (this == JSON) {
      return value instanceof Double number && Double.isFinite(number)
          ? OptionalDouble.of(number)
          : OptionalDouble.empty();
    }
    String text = String.valueOf(value).strip();
    return Numbers.withPoint(this == CSV ? text : Numbers.commaToPoint(text));
  }

  Optional<Boolean> flag(Object value) {
    if (this == JSON) {
      return value instanceof Boolean flag ? Optional.of(flag) : Optional.empty();
    }
    return switch (String.valueOf(value).strip().toLowerCase(Locale.ROOT)) {
      case "true" -> Optional.of(true);
      case "false" -> Optional.of(false);
      default -> Optional.empty();
    };
  }

  /** The finite numbers of a JSON list, or of a cell with spaces between them. */
  Optional<List<Double>> numbers(Object value) {
    List<Double> numbers = new ArrayList<>();
    for (Object each : this == JSON ? asList(value) : cellParts(value)) {
      OptionalDouble number = number(each);
      if (number.isEmpty()) {
        return Optional.empty();
      }
      numbers.add(number.getAsDouble());
    }
    return numbers.isEmpty() ? Optional.empty() : Optional.of(List.copyOf(numbers));
  }

  private static List<?> asList(Object value) {
    return value instanceof List<?> list ? list : List.of();
  }

  private static List<?> cellParts(Object value) {
    return List.of(String.valueOf(value).strip().split("\\s+"));
  }
}
