package org.limbspan.sky;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.limbspan.sky.ShootingWindow.Place;

/**
 * What a pass offers to a camera.
 *
 * @param windows those offered, in order of time, at most one for each place
 * @param withheld those not offered or cut short, and why
 */
public record ShootingPlan(Pass pass, List<ShootingWindow> windows, List<Withheld> withheld) {

  /** Why a window is not offered, or only in part. */
  public enum Reason {
    /** The Moon does not come to that altitude, or does not leave it. */
    OUT_OF_REACH,
    /** The Sun is up and nearer to the Moon than {@link ShootingWindows#SUN_DISTANCE_DEG}. */
    SUN_TOO_NEAR,
    /** A part of it is offered, the rest has {@link #SUN_TOO_NEAR}. */
    CUT_FOR_THE_SUN,
    /** The site's own horizon hides the Moon, wholly or in part. */
    BEHIND_THE_LINE,
    /** A part of it is offered; the rest is {@link #BEHIND_THE_LINE}. */
    CUT_FOR_THE_LINE,
    /** Less of the limb is lit than {@link ShootingWindows#LEAST_LIT}. */
    NEW_MOON
  }

  /** A window that is not offered, or not all of it. */
  public record Withheld(Place place, Reason reason) {}

  public ShootingPlan {
    windows = List.copyOf(windows);
    withheld = List.copyOf(withheld);
  }

  /** The window of that place, if it is offered. */
  public Optional<ShootingWindow> window(Place place) {
    return windows.stream().filter(window -> window.place() == place).findFirst();
  }

  /**
   * The low window to choose: the one in the darker sky, where both are equally dark the one after
   * rise.
   */
  public Optional<ShootingWindow> low() {
    return windows.stream()
        .filter(window -> window.place().isLow())
        .max(
            Comparator.comparing(ShootingWindow::light)
                .thenComparing(window -> window.place() == Place.LOW_RISING));
  }

  /** The high window, if it is offered. */
  public Optional<ShootingWindow> high() {
    return window(Place.HIGH);
  }

  /** Horizontal diameter high over low, at the best instants; empty without such a pair. */
  public OptionalDouble ratio() {
    return low().isEmpty() ? OptionalDouble.empty() : ratioTo(low().get());
  }

  /** The same with that low window. */
  public OptionalDouble ratioTo(ShootingWindow low) {
    return high().stream()
        .mapToDouble(
            high -> high.best().horizontalDiameterArcmin() / low.best().horizontalDiameterArcmin())
        .findFirst();
  }

  /** Whether a low and a high reading can be had, both in the dark. */
  public boolean isDarkPair() {
    return low().filter(window -> window.light().isDark()).isPresent()
        && high().filter(window -> window.light().isDark()).isPresent();
  }
}
