package org.limbspan.dashboard;

/** The pages of one rig, in the order of its table of chapters. */
enum Chapter {
  LEDGER("", "Ledger"),
  TONIGHT("/tonight", "Tonight"),
  LOG("/log", "Log a reading"),
  CYCLE("/cycle", "The cycle"),
  NIGHTS("/nights", "Night ratios"),
  CONCLUSIONS("/conclusions", "Conclusions"),
  INSTRUMENT("/rig", "The rig"),
  REMARKS("/alerts", "Remarks");

  private final String path;
  private final String title;

  Chapter(String path, String title) {
    this.path = path;
    this.title = title;
  }

  /** The path below that of the rig's ledger. */
  public String path() {
    return path;
  }

  public String title() {
    return title;
  }
}
