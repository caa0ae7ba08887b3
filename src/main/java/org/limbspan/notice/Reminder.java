package org.limbspan.notice;

import java.util.List;

/**
 * Of which windows a recipient is reminded, and when.
 *
 * @param minutesBefore the window begins, 5 to 720
 * @param places one or both
 */
public record Reminder(int minutesBefore, List<Place> places) {

  public static final int FEWEST_MINUTES = 5;
  public static final int MOST_MINUTES = 720;
  public static final Reminder USUAL = new Reminder(60, List.of(Place.LOW, Place.HIGH));

  /**
   * @throws IllegalArgumentException if minutes or places are out of range
   */
  public Reminder {
    places = List.copyOf(places);
    if (minutesBefore < FEWEST_MINUTES || minutesBefore > MOST_MINUTES) {
      throw new IllegalArgumentException(
          "minutes before %d min: expected %d to %d"
              .formatted(minutesBefore, FEWEST_MINUTES, MOST_MINUTES));
    }
    if (places.isEmpty()) {
      throw new IllegalArgumentException("places: expected low, high or both");
    }
  }
}
