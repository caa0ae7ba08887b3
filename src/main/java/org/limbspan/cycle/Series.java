package org.limbspan.cycle;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.stat.descriptive.rank.Median;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;

/**
 * Observations of one rig as columns, oldest first; a column is made when it is first asked for,
 * and once, so that several estimates can share one series. Safe for several threads.
 */
public final class Series {

  private static final Comparator<Observation> ORDER =
      Comparator.comparing(Observation::takenAt)
          .thenComparing(Observation::axis)
          .thenComparingDouble(Observation::observedArcmin);

  private final List<Observation> observations;
  private final List<Long> passes;
  private final List<Integer> knownSetups;
  private final CycleMemory memory;
  private final Once<double[]> lnObserved =
      new Once<>(() -> column(o -> Math.log(o.observedArcmin())));
  private final Once<double[]> lnPredicted =
      new Once<>(() -> column(o -> Math.log(o.predictedArcmin())));
  private final Once<double[]> lnUnrefracted = new Once<>(() -> column(Series::lnUnrefracted));
  private final Once<double[]> stated = new Once<>(() -> column(Observation::relativeUncertainty));
  private final Once<Grouping> setups =
      new Once<>(
          () ->
              Grouping.after(
                  knownSetups(), observations().stream().map(Observation::setup).toList()));
  private final Once<Grouping> nights =
      new Once<>(() -> Grouping.by(IntStream.range(0, size()).mapToObj(this::night).toList()));
  private final Once<Optional<RobustRegression.Fit>> slope =
      new Once<>(() -> SlopeEstimator.regression(this));
  private final Once<Integer> pastSize = new Once<>(() -> Milestone.pastOf(this));

  private Series(
      List<Observation> observations,
      List<Long> passes,
      List<Integer> knownSetups,
      CycleMemory memory) {
    this.observations = observations;
    this.passes = passes;
    this.knownSetups = knownSetups;
    this.memory = memory;
  }

  /** Of {@code observations} of one rig, in any order. */
  public static Series of(List<Observation> observations, Site site) {
    return of(observations, site, new CycleMemory());
  }

  /**
   * The same for a rig that was looked at before.
   *
   * @param memory of that rig, from one time to the next
   */
  public static Series of(List<Observation> observations, Site site, CycleMemory memory) {
    List<Observation> ordered = sorted(observations);
    return new Series(ordered, memory.passes().of(ordered, site), List.of(), memory);
  }

  CycleMemory memory() {
    return memory;
  }

  /** Whether something was added to the settled past, see {@link Milestone}. */
  boolean hasRest() {
    return pastSize.get() < size();
  }

  /** The settled past. */
  Series past() {
    return hasRest() ? part(0, pastSize.get(), List.of()) : this;
  }

  /** What is not in the past; its setups are numbered on from those of the past. */
  Series rest() {
    List<Integer> setups =
        observations.subList(0, pastSize.get()).stream()
            .map(Observation::setup)
            .distinct()
            .toList();
    return part(pastSize.get(), size(), setups);
  }

  private Series part(int from, int to, List<Integer> setups) {
    return new Series(observations.subList(from, to), passes.subList(from, to), setups, memory);
  }

  private List<Integer> knownSetups() {
    return knownSetups;
  }

  static List<Observation> sorted(List<Observation> observations) {
    return isSorted(observations)
        ? List.copyOf(observations)
        : observations.stream().sorted(ORDER).toList();
  }

  private static boolean isSorted(List<Observation> observations) {
    for (int i = 1; i < observations.size(); i++) {
      if (!observations.get(i).takenAt().isAfter(observations.get(i - 1).takenAt())) {
        return false;
      }
    }
    return true;
  }

  /** The part that {@code wanted} holds for. */
  public Series where(Predicate<Observation> wanted) {
    return observations.stream().allMatch(wanted)
        ? this
        : at(IntStream.range(0, size()).filter(i -> wanted.test(get(i))).boxed().toList());
  }

  /** The part within {@code [from, to)}. */
  Series between(Instant from, Instant to) {
    int first = firstAtOrAfter(from);
    int end = Math.max(first, firstAtOrAfter(to));
    return part(first, end, List.of());
  }

  /** Every second, third ... pass, so that no more than about {@code most} readings are left. */
  Series thinned(int most) {
    int step = Math.max(1, (size() + most - 1) / most);
    List<Integer> kept = new ArrayList<>();
    int pass = -1;
    for (int i = 0; i < size(); i++) {
      pass += i == 0 || pass(i) != pass(i - 1) ? 1 : 0;
      if (pass % step == 0) {
        kept.add(i);
      }
    }
    return at(kept);
  }

  private Series at(List<Integer> kept) {
    return new Series(
        kept.stream().map(observations::get).toList(),
        kept.stream().map(passes::get).toList(),
        List.of(),
        memory);
  }

  private int firstAtOrAfter(Instant instant) {
    int low = 0;
    int high = observations.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (observations.get(middle).takenAt().isBefore(instant)) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** How many readings. */
  public int size() {
    return observations.size();
  }

  List<Observation> observations() {
    return observations;
  }

  Observation get(int i) {
    return observations.get(i);
  }

  long pass(int i) {
    return passes.get(i);
  }

  long passCount() {
    return passes.stream().distinct().count();
  }

  private double[] column(ToDoubleFunction<Observation> value) {
    double[] column = new double[size()];
    for (int i = 0; i < column.length; i++) {
      column[i] = value.applyAsDouble(get(i));
    }
    return column;
  }

  double[] lnObserved() {
    return lnObserved.get().clone();
  }

  double[] lnPredicted() {
    return lnPredicted.get().clone();
  }

  /** ln of the observed diameter, the flattening of its axis by refraction taken off. */
  double[] lnUnrefracted() {
    return lnUnrefracted.get().clone();
  }

  private static double lnUnrefracted(Observation o) {
    return Math.log(
        o.observedArcmin() * o.sight().horizontalDiameterArcmin() / o.predictedArcmin());
  }

  /** The regression on which slope and months rest. */
  Optional<RobustRegression.Fit> slope() {
    return slope.get();
  }

  double[] daysSince(Instant epoch) {
    return observations.stream()
        .mapToDouble(o -> epoch.until(o.takenAt(), ChronoUnit.MILLIS) / 86_400_000.0)
        .toArray();
  }

  /** Days from the first reading to the last. */
  public double spanDays() {
    return get(0).takenAt().until(get(size() - 1).takenAt(), ChronoUnit.SECONDS) / 86400.0;
  }

  /** Median of the relative stated uncertainties. */
  public double typicalStated() {
    return new Median().evaluate(stated());
  }

  double[] stated() {
    return stated.get().clone();
  }

  Grouping setups() {
    return setups.get();
  }

  /** Readings of one pass, one setup and one axis. */
  Grouping nights() {
    return nights.get();
  }

  /** What the readings of a night have in common. */
  record Night(long pass, int setup, Axis axis) {}

  Night night(int i) {
    Observation o = observations.get(i);
    return new Night(passes.get(i), o.setup(), o.axis());
  }

  /** Made when it is first asked for. */
  private static final class Once<T> {

    private final Supplier<T> maker;
    private volatile @Nullable T made;

    private Once(Supplier<T> maker) {
      this.maker = maker;
    }

    private T get() {
      T value = made;
      if (value == null) {
        value = maker.get();
        made = value;
      }
      return value;
    }
  }
}
