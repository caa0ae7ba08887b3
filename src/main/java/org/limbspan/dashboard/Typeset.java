package org.limbspan.dashboard;

import java.util.Locale;
import org.limbspan.scale.Measured;

/** Numbers as the pages print them: true minus signs, thin spaces between thousands. */
final class Typeset {

  private static final char MINUS = '\u2212';
  private static final String PLUS_MINUS = " \u00b1 ";

  private Typeset() {}

  /** A value with its standard uncertainty, as the GUM rounds them: {@code 0.51 ± 0.13}. */
  static String pair(Measured measured) {
    return minus(measured.valueText()) + PLUS_MINUS + measured.uncertaintyText();
  }

  /** The same with a sign in any case. */
  static String signedPair(Measured measured) {
    return signed(measured) + PLUS_MINUS + measured.uncertaintyText();
  }

  /** The value alone, with a sign in any case, rounded as its uncertainty asks. */
  static String signed(Measured measured) {
    String text = minus(measured.valueText());
    return measured.value() > 0 ? "+" + text : text;
  }

  /** A value whose uncertainty is not of interest, to so many places. */
  static String places(double value, int places) {
    return minus(String.format(Locale.ROOT, "%." + places + "f", value));
  }

  /** A whole number, with a thin space between thousands. */
  static String whole(long value) {
    return minus(String.format(Locale.ROOT, "%,d", value).replace(',', '\u202f'));
  }

  /** A count with its noun: {@code 1 reading}, {@code 127 readings}. */
  static String count(long value, String noun) {
    return whole(value) + " " + noun + (value == 1 ? "" : "s");
  }

  private static String minus(String text) {
    boolean nothing = text.chars().noneMatch(c -> c >= '1' && c <= '9');
    return nothing && text.startsWith("-") ? text.substring(1) : text.replace('-', MINUS);
  }

  /** In running text, a value stays with its uncertainty and unit. */
  static String unbroken(String value) {
    return value.replace(' ', '\u00a0');
  }
}
