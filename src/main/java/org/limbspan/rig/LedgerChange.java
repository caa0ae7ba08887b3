package org.limbspan.rig;

/** Something was added to the ledger of a rig. */
public interface LedgerChange {

  /** The rig whose ledger it is. */
  long rigId();
}
