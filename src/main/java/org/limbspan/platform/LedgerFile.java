package org.limbspan.platform;

/**
 * A file that goes with a ledger.
 *
 * @param name without folders, the same in every installation
 * @param sha256 of its bytes, 64 hexadecimal digits
 */
public record LedgerFile(String name, long bytes, String sha256) {}
