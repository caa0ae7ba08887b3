package org.limbspan.platform;

/** Types of the Frictionless table schema, and of the database. */
public enum LedgerType {
  STRING("string", "text"),
  NUMBER("number", "double precision"),
  INTEGER("integer", "bigint"),
  BOOLEAN("boolean", "boolean"),
  /** ISO 8601 in UTC. */
  DATETIME("datetime", "timestamptz"),
  /** Numbers with a blank between them. */
  NUMBERS("string", "text");

  private final String open;
  private final String sql;

  LedgerType(String open, String sql) {
    this.open = open;
    this.sql = sql;
  }

  public String open() {
    return open;
  }

  public String sql() {
    return sql;
  }
}
