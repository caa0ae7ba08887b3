package org.limbspan.archive;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.Violation;
import org.postgresql.util.PSQLException;
import org.postgresql.util.ServerErrorMessage;

/** Says what of a ledger's file cannot be taken. */
final class Unfit {

  private static final Pattern PLACE =
      Pattern.compile("COPY \\w+, line (\\d+)(?:, column (\\w+)(?:: \"(.*)\")?)?");

  private Unfit() {}

  static InvalidInput file(String field, String value, String expected) {
    return InvalidInput.inBody(
        "This ledger cannot be taken; nothing of it was stored.",
        List.of(new Violation(field, value, expected)));
  }

  static InvalidInput line(String fileName, long line, String value, String expected) {
    return InvalidInput.inBody(
        "This ledger cannot be taken; nothing of it was stored.",
        List.of(new Violation(fileName, value, expected).atLine(Math.toIntExact(line))));
  }

  /** What the database has against a row. */
  static InvalidInput row(String fileName, PSQLException e) {
    ServerErrorMessage server = e.getServerErrorMessage();
    String message = server == null ? e.getMessage() : server.getMessage();
    String expected = "a value that the ledger can hold (" + message + ")";
    String where = server == null || server.getWhere() == null ? "" : server.getWhere();
    Matcher place = PLACE.matcher(where);
    if (place.find()) {
      String column = place.group(2) == null ? "" : ": " + place.group(2);
      return InvalidInput.inBody(
          "This ledger cannot be taken; nothing of it was stored.",
          List.of(
              new Violation(fileName + column, place.group(3), expected)
                  .atLine(Integer.parseInt(place.group(1)))));
    }
    String detail = server == null ? null : server.getDetail();
    return file(fileName, detail == null ? "a row" : detail, expected);
  }
}
