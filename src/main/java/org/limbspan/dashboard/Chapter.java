package org.limbspan.dashboard;

/** The pages of one rig, in the order of its table of chapters. */
enum Chapter {
  LEDGER("", "Ledger", true),
  TONIGHT("/tonight", "Tonight", false),
  LOG("/log", "Log a reading", false),
  CYCLE("/cycle", "The cycle", true),
  NIGHTS("/nights", "Night ratios", true),
  CONCLUSIONS("/conclusions", "Conclusions", true),
  INSTRUMENT("/rig", "The rig", false),
  REMARKS("/alerts", "Remarks", true),
  NOTICES("/notices", "Notices", false);

  private final String path;
  private final String title;
  private final boolean open;

  Chapter(String path, String title, boolean open) {
    this.path = path;
    this.title = title;
    this.open = open;
  }

  /** The path below that of the rig's ledger. */
  public String path() {
    return path;
  }

  public String title() {
    return title;
  }

  /** Whether a guest may look at it. */
  public boolean open() {
    return open;
  }
}
