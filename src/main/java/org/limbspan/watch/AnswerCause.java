package org.limbspan.watch;

import java.util.Arrays;
import java.util.Optional;

/** What an owner may give as the cause of an alert. */
public enum AnswerCause {
  ZOOM_MOVED("zoom-moved", "Zoom, focus, camera or mount was changed"),
  RECALIBRATED("recalibrated", "Calibrated again; the scale is put right"),
  WEATHER("weather", "Weather: seeing, haze, wind"),
  WRONG_ENTRY("wrong-entry", "Readings were entered wrongly"),
  UNEXPLAINED("unexplained", "Looked, found nothing");

  private final String label;
  private final String words;

  AnswerCause(String label, String words) {
    this.label = label;
    this.words = words;
  }

  /** The word used in requests and answers. */
  public String label() {
    return label;
  }

  /** The cause as a person would put it. */
  public String words() {
    return words;
  }

  static Optional<AnswerCause> ofLabel(String label) {
    return Arrays.stream(values()).filter(cause -> cause.label.equals(label)).findFirst();
  }
}
