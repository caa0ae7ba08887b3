package org.limbspan.dashboard;

import java.util.List;

/**
 * A column of numbers under each other by their decimal points, by spaces as wide as a figure.
 * Uncertainties after a plus-minus sign are aligned in the same way.
 */
final class Aligned {

  private static final String FIGURE_SPACE = "\u2007";
  private static final String POINT_SPACE = "\u2008";
  private static final String SIGN = "\u00b1";

  private Aligned() {}

  static List<String> column(List<String> cells) {
    int whole = cells.stream().mapToInt(cell -> wholeOfUncertainty(cell)).max().orElse(0);
    int value = cells.stream().mapToInt(cell -> places(value(cell))).max().orElse(0);
    int uncertainty = cells.stream().mapToInt(cell -> places(uncertainty(cell))).max().orElse(0);
    boolean pairs = cells.stream().anyMatch(cell -> cell.contains(SIGN));
    return cells.stream()
        .map(
            cell -> {
              String left = value(cell) + pad(value(cell), value);
              if (!pairs) {
                return left;
              }
              String right = uncertainty(cell);
              String lead = FIGURE_SPACE.repeat(whole - wholeOfUncertainty(cell));
              return right.isEmpty()
                  ? left + "   " + lead + pad("", uncertainty)
                  : left + " " + SIGN + " " + lead + right + pad(right, uncertainty);
            })
        .toList();
  }

  private static String value(String cell) {
    int sign = cell.indexOf(SIGN);
    return sign < 0 ? cell : cell.substring(0, sign).strip();
  }

  private static String uncertainty(String cell) {
    int sign = cell.indexOf(SIGN);
    return sign < 0 ? "" : cell.substring(sign + 1).strip();
  }

  private static int wholeOfUncertainty(String cell) {
    String text = uncertainty(cell);
    int point = text.indexOf('.');
    return point < 0 ? text.length() : point;
  }

  private static int places(String number) {
    int point = number.indexOf('.');
    return point < 0 ? 0 : number.length() - point - 1;
  }

  private static String pad(String number, int places) {
    int missing = places - places(number);
    String point = places > 0 && number.indexOf('.') < 0 ? POINT_SPACE : "";
    return point + FIGURE_SPACE.repeat(missing);
  }
}
