package org.limbspan.cycle;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.hipparchus.stat.descriptive.rank.Median;
import org.limbspan.sky.Axis;
import org.limbspan.sky.Site;

/** Observations of one rig as columns, oldest first. */
final class Series {

  private static final Comparator<Observation> ORDER =
      Comparator.comparing(Observation::takenAt)
          .thenComparing(Observation::axis)
          .thenComparingDouble(Observation::observedArcmin);

  private final List<Observation> observations;
  private final List<Long> passes;

  private Series(List<Observation> observations, List<Long> passes) {
    this.observations = observations;
    this.passes = passes;
  }

  static Series of(List<Observation> observations, Site site) {
    List<Observation> ordered = sorted(observations);
    return new Series(ordered, ordered.stream().map(o -> PassNumber.of(o.sight(), site)).toList());
  }

  static List<Observation> sorted(List<Observation> observations) {
    return observations.stream().sorted(ORDER).toList();
  }

  /** The part that {@code wanted} holds for. */
  Series where(Predicate<Observation> wanted) {
    return at(IntStream.range(0, size()).filter(i -> wanted.test(get(i))).boxed().toList());
  }

  /** The part within {@code [from, to)}. */
  Series between(Instant from, Instant to) {
    int first = firstAtOrAfter(from);
    int end = Math.max(first, firstAtOrAfter(to));
    return new Series(observations.subList(first, end), passes.subList(first, end));
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
        kept.stream().map(observations::get).toList(), kept.stream().map(passes::get).toList());
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

  int size() {
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

  double[] lnObserved() {
    return observations.stream().mapToDouble(o -> Math.log(o.observedArcmin())).toArray();
  }

  double[] lnPredicted() {
    return observations.stream().mapToDouble(o -> Math.log(o.predictedArcmin())).toArray();
  }

  /** ln of the observed diameter, the flattening of its axis by refraction taken off. */
  double[] lnUnrefracted() {
    return observations.stream()
        .mapToDouble(
            o ->
                Math.log(
                    o.observedArcmin()
                        * o.sight().horizontalDiameterArcmin()
                        / o.predictedArcmin()))
        .toArray();
  }

  double[] daysSince(Instant epoch) {
    return observations.stream()
        .mapToDouble(o -> epoch.until(o.takenAt(), ChronoUnit.MILLIS) / 86_400_000.0)
        .toArray();
  }

  double spanDays() {
    return get(0).takenAt().until(get(size() - 1).takenAt(), ChronoUnit.SECONDS) / 86400.0;
  }

  double typicalStated() {
    return new Median().evaluate(stated());
  }

  double[] stated() {
    return observations.stream().mapToDouble(Observation::relativeUncertainty).toArray();
  }

  Grouping setups() {
    return Grouping.by(observations.stream().map(Observation::setup).toList());
  }

  /** Readings of one pass, one setup and one axis. */
  Grouping nights() {
    return Grouping.by(IntStream.range(0, size()).mapToObj(this::night).toList());
  }

  /** What the readings of a night have in common. */
  record Night(long pass, int setup, Axis axis) {}

  Night night(int i) {
    Observation o = observations.get(i);
    return new Night(passes.get(i), o.setup(), o.axis());
  }
}
