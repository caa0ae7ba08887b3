package org.limbspan.platform;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What a client should have sent for a value of a Java type, in words. */
final class ExpectedValue {

  private static final Set<Class<?>> WHOLE =
      Set.of(int.class, long.class, Integer.class, Long.class, BigInteger.class);
  private static final Set<Class<?>> NUMBER =
      Set.of(double.class, float.class, Double.class, Float.class, BigDecimal.class);
  private static final Set<Class<?>> INSTANT = Set.of(Instant.class, OffsetDateTime.class);

  private ExpectedValue() {}

  static String of(@Nullable Class<?> type) {
    if (type == null) {
      return "another kind of value";
    }
    if (INSTANT.contains(type)) {
      return "an instant in ISO 8601 with an offset, such as 2026-05-02T21:14:00+02:00";
    }
    if (type == LocalDate.class) {
      return "a date such as 2026-05-02";
    }
    if (type.isEnum()) {
      return "one of "
          + Arrays.stream(type.getEnumConstants())
              .map(String::valueOf)
              .collect(Collectors.joining(", "));
    }
    return ofBasic(type);
  }

  private static String ofBasic(Class<?> type) {
    if (WHOLE.contains(type)) {
      return "a whole number";
    }
    if (NUMBER.contains(type)) {
      return "a number";
    }
    if (type == boolean.class || type == Boolean.class) {
      return "true or false";
    }
    if (type == String.class) {
      return "a text";
    }
    return Iterable.class.isAssignableFrom(type) || type.isArray() ? "a list" : "an object";
  }
}
