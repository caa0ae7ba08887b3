package org.limbspan.platform;

/**
 * A column of a part of the ledger.
 *
 * @param name with the unit
 * @param description in words, with the unit
 */
public record LedgerColumn(String name, LedgerType type, boolean required, String description) {

  public static LedgerColumn required(String name, LedgerType type, String description) {
    return new LedgerColumn(name, type, true, description);
  }

  public static LedgerColumn optional(String name, LedgerType type, String description) {
    return new LedgerColumn(name, type, false, description);
  }
}
