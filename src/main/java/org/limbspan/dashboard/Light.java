package org.limbspan.dashboard;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The light in which a page is drawn; the reader's choice, kept in a cookie. */
enum Light {
  DAY("day", "day", "light"),
  /** Red on black, bright enough to read by. */
  NIGHT("night", "night", "dark"),
  /** Red on black with as little ink as reading allows: for eyes adapted to the dark. */
  DARKEST("darkest", "darkest", "dark"),
  /** Day or night, as the device prefers. */
  DEVICE("device", "as the device", "light dark");

  private final String label;
  private final String words;
  private final String colorScheme;

  Light(String label, String words, String colorScheme) {
    this.label = label;
    this.words = words;
    this.colorScheme = colorScheme;
  }

  /** The light of that label; {@link #DEVICE} where there is none. */
  static Light ofLabel(@Nullable String label) {
    return Arrays.stream(values())
        .filter(light -> light.label.equals(label))
        .findFirst()
        .orElse(DEVICE);
  }

  public String label() {
    return label;
  }

  public String words() {
    return words;
  }

  /** What the page tells the browser, so that nothing shines before the style sheet is there. */
  public String colorScheme() {
    return colorScheme;
  }
}
