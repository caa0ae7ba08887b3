package org.limbspan.sky;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.limbspan.sky.ShootingPlan.Reason;
import org.limbspan.sky.ShootingPlan.Withheld;
import org.limbspan.sky.ShootingWindow.Place;

/**
 * Finds the minutes of a pass that suit a low and a high reading of the Moon's horizontal diameter.
 *
 * <p>Low: apparent altitude from {@link #LOW_LEAST_DEG} to {@link #LOW_GREATEST_DEG}, best where it
 * passes {@link #LOW_BEST_DEG}. Lower down the air blurs the limb; higher up some of the ratio is
 * given away, which goes with the sine of the altitude: a tenth of it between 10 and 15 degrees.
 * Both are common practice, no source. Refraction there flattens the disc by 0.4 to 1.1 percent
 * upright and by nothing that differs from the high reading along the horizon.
 *
 * <p>High: as long as the Moon stands within {@link #HIGH_WITHIN_DEG} of its culmination, but no
 * more than {@link #HIGH_LONGEST} to either side; best at culmination itself. Over so little the
 * size changes by no more than 0.12 percent, most of it the Moon's own way to or from perigee.
 * Offered if the culmination is at an apparent {@link #HIGH_LEAST_DEG} or more.
 *
 * <p>Never offered: an instant at which the Sun stands above {@link #SUN_DOWN_DEG} and nearer to
 * the Moon than {@link #SUN_DISTANCE_DEG}, and windows whose Moon is lit by less than {@link
 * #LEAST_LIT}. Both are choices of caution and common practice, no source.
 *
 * <p>Edges are good to a second for the air of {@link Atmosphere#meanAt}.
 */
public final class ShootingWindows {

  public static final double LOW_LEAST_DEG = 8;
  public static final double LOW_GREATEST_DEG = 15;
  public static final double LOW_BEST_DEG = 10;
  public static final double HIGH_LEAST_DEG = 20;
  public static final double HIGH_WITHIN_DEG = 2;
  public static final Duration HIGH_LONGEST = Duration.ofHours(1);
  public static final double SUN_DISTANCE_DEG = 20;

  /** The Sun's centre stands lower than this once it has set, also seen from a high place. */
  public static final double SUN_DOWN_DEG = -2;

  public static final double LEAST_LIT = 0.01;

  /** The Moon goes 0.6 degrees an hour at most, so never that much nearer within half a turn. */
  private static final double NEVER_TOO_NEAR_DEG = SUN_DISTANCE_DEG + 10;

  /** The shortest windows, two degrees about a culmination at the zenith, last 16 minutes. */
  private static final Duration STEP = Duration.ofMinutes(12);

  private static final Duration STEP_NEAR_THE_SUN = Duration.ofMinutes(4);

  private final Sky sky;
  private final Site site;
  private final Atmosphere air;
  private final Stretches stretches;
  private final Optional<HorizonLine> line;

  private ShootingWindows(Sky sky, Site site, Optional<HorizonLine> line) {
    this.sky = sky;
    this.site = site;
    this.line = line;
    this.air = Atmosphere.meanAt(site.elevationM());
    this.stretches = new Stretches(this::sight);
  }

  /** The windows of one site with an open horizon. */
  public static ShootingWindows of(Sky sky, Site site) {
    return new ShootingWindows(sky, site, Optional.empty());
  }

  /** The windows in which the whole disc stands over the site's own horizon, if one is known. */
  public static ShootingWindows of(Sky sky, Site site, Optional<HorizonLine> line) {
    return new ShootingWindows(sky, site, line);
  }

  /**
   * What a pass over this site offers.
   *
   * @throws IllegalArgumentException if the pass reaches beyond the ephemeris
   */
  public ShootingPlan plan(Pass pass) {
    Plan plan = new Plan(pass);
    Instant culmination = pass.culminationAt();
    Instant start = pass.startAt();
    Instant end = pass.endAt();
    plan.offer(Place.LOW_RISING, start, culmination, ShootingWindows::isLow);
    double greatestDeg = pass.culminationApparentAltitudeDeg();
    plan.offer(
        Place.HIGH,
        later(Optional.of(start), culmination.minus(HIGH_LONGEST)),
        earlier(Optional.of(end), culmination.plus(HIGH_LONGEST)),
        sight ->
            greatestDeg >= HIGH_LEAST_DEG
                && sight.apparentAltitudeDeg() >= greatestDeg - HIGH_WITHIN_DEG);
    plan.offer(Place.LOW_SETTING, culmination, end, ShootingWindows::isLow);
    return new ShootingPlan(pass, plan.windows, plan.withheld);
  }

  /** Whether no lens may point at the Moon: the Sun is up and too near to it. */
  public static boolean isSunTooNear(MoonSight sight) {
    return sight.sunAltitudeDeg() > SUN_DOWN_DEG && sight.sunSeparationDeg() < SUN_DISTANCE_DEG;
  }

  private static boolean isLow(MoonSight sight) {
    return sight.apparentAltitudeDeg() >= LOW_LEAST_DEG
        && sight.apparentAltitudeDeg() < LOW_GREATEST_DEG;
  }

  private MoonSight sight(Instant at) {
    return sky.moonAt(at, site, air);
  }

  private static Instant later(Optional<Instant> first, Instant second) {
    return first.filter(second::isBefore).orElse(second);
  }

  private static Instant earlier(Optional<Instant> first, Instant second) {
    return first.filter(second::isAfter).orElse(second);
  }

  /** What is gathered for one pass. */
  private final class Plan {

    private final Pass pass;
    private final List<ShootingWindow> windows = new ArrayList<>();
    private final List<Withheld> withheld = new ArrayList<>();

    Plan(Pass pass) {
      this.pass = pass;
    }

    void offer(Place place, Instant from, Instant to, Predicate<MoonSight> fits) {
      boolean far = pass.culmination().sunSeparationDeg() > NEVER_TOO_NEAR_DEG;
      Duration step = far ? STEP : STEP_NEAR_THE_SUN;
      Optional<Stretches.Stretch> whole = stretches.longest(from, to, step, fits);
      Predicate<MoonSight> clears = line.map(l -> fits.and(l::isClear)).orElse(fits);
      Optional<Stretches.Stretch> clear =
          line.isEmpty() ? whole : stretches.longest(from, to, step, clears);
      Optional<Stretches.Stretch> safe =
          far
              ? clear
              : stretches.longest(from, to, step, clears.and(sight -> !isSunTooNear(sight)));
      if (whole.isEmpty()) {
        withheld.add(new Withheld(place, Reason.OUT_OF_REACH));
      } else if (clear.isEmpty()) {
        withheld.add(new Withheld(place, Reason.BEHIND_THE_LINE));
      } else if (safe.isEmpty()) {
        withheld.add(new Withheld(place, Reason.SUN_TOO_NEAR));
      } else {
        offer(place, whole.get(), clear.get(), safe.get());
      }
    }

    private void offer(
        Place place, Stretches.Stretch whole, Stretches.Stretch clear, Stretches.Stretch safe) {
      MoonSight best = best(place, safe);
      if (best.illuminatedFraction() < LEAST_LIT) {
        withheld.add(new Withheld(place, Reason.NEW_MOON));
        return;
      }
      if (clear.seconds() < whole.seconds() - 1) {
        withheld.add(new Withheld(place, Reason.CUT_FOR_THE_LINE));
      }
      if (safe.seconds() < clear.seconds() - 1) {
        withheld.add(new Withheld(place, Reason.CUT_FOR_THE_SUN));
      }
      windows.add(new ShootingWindow(place, safe.from(), safe.to(), best));
    }

    private MoonSight best(Place place, Stretches.Stretch stretch) {
      MoonSight highest = pass.culmination();
      boolean inside =
          !highest.at().isBefore(stretch.from()) && highest.at().isBefore(stretch.to());
      if (place == Place.HIGH && inside) {
        return highest;
      }
      double aimDeg = place.isLow() ? LOW_BEST_DEG : highest.apparentAltitudeDeg();
      return stretches.nearest(stretch, sight -> Math.abs(sight.apparentAltitudeDeg() - aimDeg));
    }
  }
}
