package org.limbspan.dashboard;

import java.util.List;

/**
 * The page of tonight, in words ready to print.
 *
 * @param margin date and place beside the title
 * @param opening where the Moon is now and what it is going to do
 * @param windowWords what was chosen and why, and what is not offered
 * @param apsides how far the next perigee and apogee are
 * @param advice how to shoot
 */
record TonightSheet(
    String slug,
    String name,
    boolean invented,
    List<String> margin,
    List<String> opening,
    TonightArc arc,
    List<Event> events,
    List<Window> windows,
    List<String> windowWords,
    List<LedgerSheet.Dated> apsides,
    List<Night> nights,
    String nightsQuiet,
    List<String> advice,
    String zone) {

  /** A rise, a culmination or a set. */
  record Event(String name, String instant, String time, String azimuth, String altitude) {}

  /** A stretch of minutes for a reading. */
  record Window(
      String reading,
      String from,
      String best,
      String to,
      String altitude,
      String azimuth,
      String light,
      boolean chosen) {}

  /** A night worth staying up for. */
  record Night(
      String instant,
      String evening,
      String low,
      String high,
      String altitude,
      String ratio,
      String reason) {}

  public boolean isDrawn() {
    return !arc.path().isEmpty();
  }
}
