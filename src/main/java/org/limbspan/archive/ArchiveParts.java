package org.limbspan.archive;

import java.util.Comparator;
import java.util.List;
import org.limbspan.platform.LedgerColumn;
import org.limbspan.platform.LedgerPart;
import org.limbspan.platform.LedgerType;
import org.springframework.stereotype.Component;

/** The parts of a ledger, in their order, and the SQL that is the same for all. */
@Component
class ArchiveParts {

  private final List<LedgerPart> parts;

  ArchiveParts(List<LedgerPart> parts) {
    this.parts =
        parts.stream()
            .sorted(Comparator.comparing(LedgerPart::order).thenComparing(LedgerPart::name))
            .toList();
  }

  List<LedgerPart> all() {
    return parts;
  }

  static String fileName(LedgerPart part) {
    return part.name() + ".csv";
  }

  static String staged(LedgerPart part) {
    return "taken_" + part.name();
  }

  /** Instants as ISO 8601 in UTC, everything else as the database writes it. */
  static String copyOut(LedgerPart part, long rigId) {
    List<String> columns = part.columns().stream().map(ArchiveParts::written).toList();
    return "copy (select %s from (%s) part) to stdout (format csv, header true, encoding 'UTF8')"
        .formatted(String.join(", ", columns), part.select(rigId));
  }

  private static String written(LedgerColumn column) {
    return column.type() == LedgerType.DATETIME
        ? "to_char(%1$s at time zone 'UTC', 'YYYY-MM-DD\"T\"HH24:MI:SS.US\"Z\"') as %1$s"
            .formatted(column.name())
        : column.name();
  }

  static String createStaged(LedgerPart part) {
    List<String> columns =
        part.columns().stream()
            .map(c -> c.name() + " " + c.type().sql() + (c.required() ? " not null" : ""))
            .toList();
    return "create temporary table %s (line bigint generated always as identity, %s) on commit drop"
        .formatted(staged(part), String.join(", ", columns));
  }

  static String copyIn(LedgerPart part) {
    List<String> columns = part.columns().stream().map(LedgerColumn::name).toList();
    return "copy %s (%s) from stdin (format csv, header match, encoding 'UTF8')"
        .formatted(staged(part), String.join(", ", columns));
  }
}
