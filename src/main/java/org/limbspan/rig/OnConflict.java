package org.limbspan.rig;

/** What to do if the ledger holds another value for the same thing. */
public enum OnConflict {
  REFUSE,
  SUPERSEDE
}
