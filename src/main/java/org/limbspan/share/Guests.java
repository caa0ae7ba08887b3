package org.limbspan.share;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.AltitudeSource;
import org.limbspan.cycle.Estimate;
import org.limbspan.cycle.MoonDistance;
import org.limbspan.cycle.NightPair;
import org.limbspan.cycle.NightRatioEstimator;
import org.limbspan.cycle.NightRatios;
import org.limbspan.cycle.Observation;
import org.limbspan.cycle.SelfReliantCycle;
import org.limbspan.cycle.SelfReliantEstimator;
import org.limbspan.cycle.Sighted;
import org.limbspan.cycle.SlopeEstimator;
import org.limbspan.cycle.TwoSiteDistance;
import org.limbspan.cycle.TwoSiteEstimator;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.NotFound;
import org.limbspan.reading.Readings;
import org.limbspan.reading.StandardisedReading;
import org.limbspan.rig.Rig;
import org.limbspan.share.Comparison.Compared;
import org.limbspan.share.Comparison.Figure;
import org.limbspan.share.Comparison.Parallax;
import org.limbspan.sky.Site;
import org.limbspan.sky.Sky;
import org.limbspan.watch.CycleResult;
import org.limbspan.watch.Judgement;
import org.limbspan.watch.NightsResult;
import org.limbspan.watch.OwnResult;
import org.limbspan.watch.Watch;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Rigs of other observers, and a rig beside them. */
@Service
public class Guests {

  /** How far apart in time two readings of a pair may be. */
  private static final int WITHIN_MINUTES = 20;

  private final GuestStore store;
  private final Readings readings;
  private final Watch watch;
  private final Sky sky;

  Guests(GuestStore store, Readings readings, Watch watch, Sky sky) {
    this.store = store;
    this.readings = readings;
    this.watch = watch;
    this.sky = sky;
  }

  /**
   * Loads a package; the very same one is held once.
   *
   * @throws org.limbspan.platform.InvalidInput naming file, line and column of what is wrong
   */
  @Transactional
  public Guest load(byte[] body, Instant now) throws IOException {
    GuestPackage loaded = GuestPackage.read(body);
    for (SharedReading each : loaded.readings()) {
      requireWithinEphemeris(each.takenAt());
    }
    long id = store.add(loaded, now).orElseGet(() -> store.held(loaded.sha256()));
    return find(id);
  }

  private void requireWithinEphemeris(Instant at) {
    if (at.isBefore(sky.ephemerisFrom()) || !at.isBefore(sky.ephemerisTo())) {
      throw InvalidInput.inBody(
          Sharing.READINGS + ": taken_at",
          at,
          "an instant from %s to before %s, the reach of the ephemeris"
              .formatted(sky.ephemerisFrom(), sky.ephemerisTo()));
    }
  }

  /** All of them, by short name. */
  @Transactional(readOnly = true)
  public List<Guest> all() {
    return store.all();
  }

  /**
   * One of them.
   *
   * @throws NotFound if there is none
   */
  @Transactional(readOnly = true)
  public Guest find(long id) {
    return store.all().stream()
        .filter(guest -> guest.id() == id)
        .findFirst()
        .orElseThrow(() -> new NotFound("guest", "id", id));
  }

  /**
   * Removes one, readings and all.
   *
   * @throws NotFound if there is none
   */
  @Transactional
  public void remove(long id) {
    if (!store.remove(id)) {
      throw new NotFound("guest", "id", id);
    }
  }

  /** The rig beside all guests. Its own figures are those of its judgement. */
  @Transactional(readOnly = true)
  public Comparison compare(Rig rig) {
    List<Compared> compared = new ArrayList<>();
    List<Parallax> parallaxes = new ArrayList<>();
    compared.add(own(rig, watch.judgement(rig)));
    List<Guest> guests = store.all();
    List<Observation> ours =
        guests.isEmpty()
            ? List.of()
            : readings.standardised(rig.id()).stream().map(Guests::observation).toList();
    for (Guest guest : guests) {
      List<SharedReading> theirs = store.readings(guest.id());
      List<Observation> observations = observations(theirs, site(guest, 0, 0));
      compared.add(guest(guest, observations));
      parallaxes.add(parallax(ours, rig.site(), guest, theirs, observations));
    }
    return new Comparison(compared, parallaxes);
  }

  private static Compared own(Rig rig, Judgement judgement) {
    NightsResult.Summary nights = judgement.nights().summary();
    CycleResult cycle = judgement.cycle();
    OwnResult.@Nullable Own own = judgement.own().computedAltitudes();
    return new Compared(
        null,
        rig.name(),
        rig.site().latitudeDeg(),
        rig.site().longitudeDeg(),
        0,
        cycle.readingCount(),
        nights.pairCount(),
        figure(nights.meanObservedRatio(), nights.meanRatioUncertainty()),
        figure(nights.slope(), nights.slopeUncertainty()),
        figure(cycle.swing().slope(), cycle.swing().slopeUncertainty()),
        own == null ? null : figure(own.swingPercent().value(), own.swingPercent().uncertainty()));
  }

  private Compared guest(Guest guest, List<Observation> observations) {
    Site site = site(guest, 0, 0);
    NightRatios ratios = NightRatioEstimator.estimate(observations, site);
    return new Compared(
        guest.id(),
        guest.name(),
        guest.latitudeDeg(),
        guest.longitudeDeg(),
        guest.positionDeg(),
        guest.readingCount(),
        ratios.pairs().size(),
        meanRatio(ratios.pairs()),
        figure(ratios.slope()),
        figure(SlopeEstimator.estimate(observations, site).slope()),
        figure(
            SelfReliantEstimator.estimate(observations, site, AltitudeSource.COMPUTED)
                .map(SelfReliantCycle::swingPercent)));
  }

  private static @Nullable Figure meanRatio(List<NightPair> pairs) {
    double weights = 0;
    double sum = 0;
    for (NightPair pair : pairs) {
      double weight = Math.pow(pair.observedRatio() / pair.uncertainty(), 2);
      weights += weight;
      sum += weight * Math.log(pair.observedRatio());
    }
    return pairs.isEmpty()
        ? null
        : new Figure(Math.exp(sum / weights), Math.exp(sum / weights) / Math.sqrt(weights));
  }

  private static @Nullable Figure figure(@Nullable Double value, @Nullable Double uncertainty) {
    return value == null || uncertainty == null ? null : new Figure(value, uncertainty);
  }

  private static @Nullable Figure figure(Optional<Estimate> estimate) {
    return estimate.map(e -> new Figure(e.value(), e.uncertainty())).orElse(null);
  }

  private Parallax parallax(
      List<Observation> ours,
      Site site,
      Guest guest,
      List<SharedReading> theirs,
      List<Observation> observations) {
    Optional<TwoSiteDistance> found = distance(ours, site, observations, site(guest, 0, 0));
    if (found.isEmpty()) {
      return new Parallax(guest.id(), guest.name(), 0, WITHIN_MINUTES, null, null, null, null);
    }
    Estimate parallax = found.get().distance().parallax();
    double position = positionUncertainty(ours, site, guest, theirs, parallax.value());
    Estimate whole = new Estimate(parallax.value(), Math.hypot(parallax.uncertainty(), position));
    boolean told = whole.value() > 3 * whole.uncertainty();
    return new Parallax(
        guest.id(),
        guest.name(),
        found.get().pairCount(),
        WITHIN_MINUTES,
        figure(Optional.of(whole)),
        position,
        told
            ? new Figure(1 / whole.value(), whole.uncertainty() / (whole.value() * whole.value()))
            : null,
        found.get().leverage());
  }

  private static Optional<TwoSiteDistance> distance(
      List<Observation> ours, Site site, List<Observation> theirs, Site other) {
    return TwoSiteEstimator.estimate(
        ours, site, theirs, other, AltitudeSource.COMPUTED, Duration.ofMinutes(WITHIN_MINUTES));
  }

  /** What the parallax moves by where the guest stands a standard uncertainty away, both ways. */
  private double positionUncertainty(
      List<Observation> ours, Site site, Guest guest, List<SharedReading> theirs, double parallax) {
    if (guest.positionDeg() == 0) {
      return 0;
    }
    double away = guest.positionDeg() / Math.sqrt(12);
    double[] moved = new double[2];
    for (int way = 0; way < 2; way++) {
      Site other = site(guest, way == 0 ? away : 0, way == 0 ? 0 : away);
      moved[way] =
          distance(ours, site, observations(theirs, other), other)
              .map(TwoSiteDistance::distance)
              .map(MoonDistance::parallax)
              .map(estimate -> estimate.value() - parallax)
              .orElse(0.0);
    }
    return Math.hypot(moved[0], moved[1]);
  }

  private static Site site(Guest guest, double northDeg, double eastDeg) {
    double latitude = guest.latitudeDeg() + northDeg;
    return new Site(
        latitude > 90 ? guest.latitudeDeg() - northDeg : latitude,
        Math.IEEEremainder(guest.longitudeDeg() + eastDeg, 360),
        guest.elevationM());
  }

  private List<Observation> observations(List<SharedReading> shared, Site site) {
    return shared.stream()
        .map(
            each ->
                new Observation(
                    each.takenAt(),
                    each.axis(),
                    each.diameterArcmin(),
                    each.uncertaintyArcmin() / each.diameterArcmin(),
                    sky.moonAt(each.takenAt(), site),
                    each.setup(),
                    sighted(each.altitudeDeg())))
        .toList();
  }

  private static Observation observation(StandardisedReading each) {
    return new Observation(
        each.reading().takenAt(),
        each.reading().axis(),
        each.diameterArcmin(),
        each.relativeUncertainty(),
        each.sight(),
        each.setup(),
        sighted(each.reading().circumstances().altitudeDeg()));
  }

  private static Sighted sighted(@Nullable Double altitudeDeg) {
    return new Sighted(
        altitudeDeg == null ? OptionalDouble.empty() : OptionalDouble.of(altitudeDeg),
        OptionalDouble.empty());
  }
}
