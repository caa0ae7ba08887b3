package org.limbspan.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;

/** The header line of a CSV file: what each column is. */
final class CsvHeader {

  private final List<String> names;
  private final Notation notation;

  private CsvHeader(List<String> names, Notation notation) {
    this.names = names;
    this.notation = notation;
  }

  static CsvHeader of(List<String> columns, char separator) {
    List<String> names = new ArrayList<>();
    Map<String, String> seen = new HashMap<>();
    for (String column : columns) {
      String name = Notation.nameOfColumn(column);
      if (!name.isEmpty() && seen.putIfAbsent(name, column) != null) {
        throw InvalidInput.unreadable(
            "The CSV header names the column " + column.strip() + " twice. Nothing was stored.",
            List.of(new Violation(column.strip(), column, "each column once").atLine(1)));
      }
      names.add(name);
    }
    return new CsvHeader(
        List.copyOf(names), separator == ',' ? Notation.CSV : Notation.CSV_WITH_DECIMAL_COMMA);
  }

  /** Refuses the file unless it has a column of each set. */
  void require(List<Set<String>> required) {
    List<Violation> missing = new ArrayList<>();
    for (Set<String> alternatives : required) {
      if (names.stream().noneMatch(alternatives::contains)) {
        String columns =
            alternatives.stream()
                .map(Notation.CSV::written)
                .sorted()
                .collect(Collectors.joining(" or "));
        missing.add(new Violation(columns, null, "a column of that name").atLine(1));
      }
    }
    if (!missing.isEmpty()) {
      throw InvalidInput.unreadable(
          "The CSV header lacks "
              + missing.stream().map(Violation::field).collect(Collectors.joining(", "))
              + ". Nothing was stored.",
          missing);
    }
  }

  Entry entry(int line, List<String> cells) {
    Map<String, Object> values = new LinkedHashMap<>();
    for (int i = 0; i < Math.min(names.size(), cells.size()); i++) {
      if (!names.get(i).isEmpty() && !cells.get(i).isBlank()) {
        values.put(names.get(i), cells.get(i));
      }
    }
    Entry entry = new Entry(line, notation, values);
    if (cells.size() != names.size() && !isPadded(cells)) {
      entry.refuse(
          "line",
          cells.size() + (cells.size() == 1 ? " field" : " fields"),
          "as many fields as the header has, " + names.size());
    }
    return entry;
  }

  /** Whether all cells beyond the header are empty, as spreadsheets like to add them. */
  private boolean isPadded(List<String> cells) {
    return cells.size() > names.size()
        && cells.subList(names.size(), cells.size()).stream().allMatch(String::isBlank);
  }
}
