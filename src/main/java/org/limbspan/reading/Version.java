package org.limbspan.reading;

/** One row of the ledger for an instant and axis. */
record Version(RecordedReading reading, Standing standing) {

  /** Whether the row enters a reading or takes it back. */
  enum Standing {
    HELD("held"),
    WITHDRAWN("withdrawn");

    private final String label;

    Standing(String label) {
      this.label = label;
    }

    String label() {
      return label;
    }

    static Standing ofLabel(String label) {
      return label.equals(HELD.label) ? HELD : WITHDRAWN;
    }
  }

  boolean isHeld() {
    return standing == Standing.HELD;
  }

  /** The same diameter with the same uncertainty, whatever was added to it. */
  boolean measuresLike(NewReading entry) {
    return reading.diameter().equals(entry.diameter());
  }

  /** The same in every field. */
  boolean equalsIn(NewReading entry) {
    return measuresLike(entry)
        && reading.frames().equals(entry.frames())
        && reading.circumstances().equals(entry.circumstances());
  }
}
