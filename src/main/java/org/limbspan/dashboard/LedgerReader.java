package org.limbspan.dashboard;

/** Gathers what is held and judged of a rig. */
interface LedgerReader {

  LedgerFacts read(String slug);
}
