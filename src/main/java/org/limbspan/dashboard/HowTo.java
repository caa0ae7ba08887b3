package org.limbspan.dashboard;

import java.util.Arrays;
import org.limbspan.platform.NotFound;

/** The pages that tell how a thing is done. */
enum HowTo {
  SHOOTING("shooting", "Photographing low and high"),
  CALIBRATING("calibrating", "A sheet at a measured distance"),
  PROTRACTOR("protractor", "A sighting protractor with a plumb line"),
  BEARING_CARD("bearing-card", "A bearing card"),
  PLOTS("plots", "Reading the figures");

  private final String path;
  private final String title;

  HowTo(String path, String title) {
    this.path = path;
    this.title = title;
  }

  public String path() {
    return path;
  }

  public String title() {
    return title;
  }

  static HowTo ofPath(String path) {
    return Arrays.stream(values())
        .filter(each -> each.path.equals(path))
        .findFirst()
        .orElseThrow(() -> new NotFound("page", "name", path));
  }
}
