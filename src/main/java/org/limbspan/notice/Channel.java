package org.limbspan.notice;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** The way that a notice takes. */
public enum Channel {
  MAIL("mail"),
  WEBHOOK("webhook");

  private final String label;

  Channel(String label) {
    this.label = label;
  }

  public String label() {
    return label;
  }

  static Channel ofLabel(String label) {
    return Arrays.stream(values())
        .filter(channel -> channel.label.equals(label))
        .findFirst()
        .orElseThrow();
  }

  /** All of them by label. */
  public static Map<String, Channel> byLabel() {
    Map<String, Channel> channels = new LinkedHashMap<>();
    Arrays.stream(values()).forEach(channel -> channels.put(channel.label, channel));
    return Collections.unmodifiableMap(channels);
  }
}
