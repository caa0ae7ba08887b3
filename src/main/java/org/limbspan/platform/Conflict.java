package org.limbspan.platform;

import java.util.List;

/** The request contradicts what the ledger already holds: 409. */
public final class Conflict extends Problem {

  private static final long serialVersionUID = 1L;

  public Conflict(String detail, List<Violation> violations) {
    super(Category.CONFLICT, detail, violations);
  }

  public Conflict(String detail, Violation violation) {
    this(detail, List.of(violation));
  }
}
