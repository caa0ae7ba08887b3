package org.limbspan.platform;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.hibernate.TransactionException;
import org.jspecify.annotations.Nullable;

/**
 * What the database could not do just now, so that the same request may succeed later. Told apart
 * by SQLSTATE (PostgreSQL documentation, appendix "PostgreSQL Error Codes").
 */
enum DatabaseTrouble {
  UNREACHABLE("The database does not answer just now; send the request again.", 5),
  NO_ROOM("The database has no room left on its disk; nothing was stored.", 60),
  BUSY("The database is too busy just now; nothing was stored, send the request again.", 5),
  CONTENDED("Another request was changing the same rows; nothing was stored, send it again.", 1);

  private static final int DEPTH = 20;

  private final String detail;
  private final int retryAfterS;

  DatabaseTrouble(String detail, int retryAfterS) {
    this.detail = detail;
    this.retryAfterS = retryAfterS;
  }

  String detail() {
    return detail;
  }

  int retryAfterS() {
    return retryAfterS;
  }

  /** Looks along the causes; empty if none of them is a passing trouble of the database. */
  static Optional<DatabaseTrouble> in(Throwable thrown) {
    List<Throwable> causes =
        Stream.iterate(thrown, Objects::nonNull, Throwable::getCause).limit(DEPTH).toList();
    return causes.stream()
        .flatMap(cause -> ofOne(cause).stream())
        .findFirst()
        .or(() -> causes.stream().anyMatch(isLost()) ? Optional.of(UNREACHABLE) : Optional.empty());
  }

  /** A rollback or commit that could not be sent: the first failure is lost with its state. */
  private static Predicate<Throwable> isLost() {
    return TransactionException.class::isInstance;
  }

  private static Optional<DatabaseTrouble> ofOne(Throwable cause) {
    if (cause instanceof SQLTransientConnectionException) {
      return Optional.of(UNREACHABLE);
    }
    return cause instanceof SQLException sql ? ofState(sql.getSQLState()) : Optional.empty();
  }

  private static Optional<DatabaseTrouble> ofState(@Nullable String state) {
    if (state == null) {
      return Optional.empty();
    }
    return switch (state) {
      case "57P01", "57P02", "57P03" -> Optional.of(UNREACHABLE);
      case "53100" -> Optional.of(NO_ROOM);
      case "53200", "53300", "57014" -> Optional.of(BUSY);
      case "40001", "40P01", "55P03" -> Optional.of(CONTENDED);
      default -> state.startsWith("08") ? Optional.of(UNREACHABLE) : Optional.empty();
    };
  }
}
