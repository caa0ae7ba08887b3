package org.limbspan.reading;

/** What to do with a batch of which some lines cannot be taken. */
public enum BadLines {
  /** Store nothing. */
  REFUSE_BATCH,
  /** Store the good ones and name the others. */
  KEEP_GOOD
}
