package org.limbspan.notice;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a notice is about. */
public enum NoticeKind {
  /** A judgement found something new. */
  ALERT_RAISED("alert-raised", "a remark is raised", true),
  /** An answered alert whose later readings agree. */
  ALERT_SETTLED("alert-settled", "an answered remark is settled", true),
  /** A raised alert is found no more; goes to whoever was told that it was raised. */
  ALERT_WITHDRAWN("alert-withdrawn", "a remark is taken back", false),
  /** A calendar month is over; the cycle so far. */
  MONTHLY_LETTER("monthly-letter", "a month is over, with the cycle so far", true),
  /** A window to photograph in begins soon. */
  WINDOW_REMINDER("window-reminder", "a window to photograph in begins soon", true),
  /** No reading came for some passes. */
  RIG_SILENT("rig-silent", "no reading came for some passes", true),
  /** Asked for by the owner; stands outside the order and is tried once. */
  TEST("test", "a test", false);

  private final String label;
  private final String words;
  private final boolean chosen;

  NoticeKind(String label, String words, boolean chosen) {
    this.label = label;
    this.words = words;
    this.chosen = chosen;
  }

  /** The word for it, such as {@code alert-raised}. */
  public String label() {
    return label;
  }

  /** What has happened, as the end of a sentence. */
  public String words() {
    return words;
  }

  /** The kinds that a recipient can be told of or not, by label. */
  public static Map<String, NoticeKind> toChoose() {
    Map<String, NoticeKind> kinds = new LinkedHashMap<>();
    all().stream().filter(kind -> kind.chosen).forEach(kind -> kinds.put(kind.label, kind));
    return Collections.unmodifiableMap(kinds);
  }

  static NoticeKind ofLabel(String label) {
    return all().stream().filter(kind -> kind.label.equals(label)).findFirst().orElseThrow();
  }

  private static List<NoticeKind> all() {
    return Arrays.asList(values());
  }
}
