package org.limbspan.watch;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.limbspan.cycle.LatitudeRatios;
import org.limbspan.cycle.NearMoon;
import org.limbspan.cycle.NightsNeeded;
import org.limbspan.cycle.SampleSize;
import org.limbspan.sky.Site;
import org.limbspan.watch.Conclusions.Basis;
import org.limbspan.watch.Conclusions.Outlook;
import org.limbspan.watch.Conclusions.Prediction;
import org.limbspan.watch.Conclusions.Quantity;
import org.limbspan.watch.Conclusions.Question;
import org.limbspan.watch.Conclusions.Reply;
import org.limbspan.watch.Conclusions.Statement;
import org.limbspan.watch.Conclusions.Support;
import org.limbspan.watch.Conclusions.Unit;

/** Draws the conclusions from a judgement: the same figures, each with what it rests on. */
final class ConclusionsSummary {

  private static final double LIMIT_SIGMAS = 3;
  private static final double DAYS_OF_A_MONTH = 27.5545;
  private static final int LEAST_SIGHTED = 8;
  private static final double POWER = 0.9;
  private static final double GROWTH_TO = 0.1;
  private static final double DISTANCE_TO = 0.01;
  private static final double PERIOD_TO_D = 0.01;
  private static final double ECCENTRICITY_TO = 0.0005;
  private static final double SWING_TO_PERCENT = 0.1;
  private static final double ODDS_TO = 2;

  /** Beyond this the Moon over the equator hardly rises. */
  private static final double LAST_LATITUDE_DEG = 89;

  private final Judgement judgement;
  private final CycleResult cycle;
  private final NightsResult.Summary nights;
  private final List<NightsResult.Night> pairs;
  private final OwnResult own;
  private final Prediction prediction;
  private final boolean selfReliant;

  private ConclusionsSummary(Judgement judgement, Site site, boolean selfReliant) {
    this.judgement = judgement;
    this.cycle = judgement.cycle();
    this.nights = judgement.nights().summary();
    this.own = judgement.own();
    this.prediction = prediction(site);
    this.selfReliant = selfReliant;
    this.pairs =
        judgement.nights().nights().stream()
            .filter(night -> !selfReliant || night.readingCount() == 2)
            .toList();
  }

  static Conclusions of(Judgement judgement, Site site, boolean selfReliant) {
    return new ConclusionsSummary(judgement, site, selfReliant).conclusions();
  }

  private Conclusions conclusions() {
    HypothesesResult told = judgement.hypotheses();
    return new Conclusions(
        selfReliant,
        cycle.readingCount(),
        pairs.size(),
        monthCount(),
        own.spanDays(),
        own.sightedCount(),
        withinANight(),
        withinAMonth(),
        statements(),
        prediction,
        selfReliant
            ? null
            : new Support(told.hypotheses(), told.log10BayesFactor(), told.sensitivity()),
        outlook());
  }

  private static Prediction prediction(Site site) {
    double latitude = Math.max(-LAST_LATITUDE_DEG, Math.min(LAST_LATITUDE_DEG, site.latitudeDeg()));
    LatitudeRatios ratios = LatitudeRatios.at(latitude, NearMoon.HEIGHT_KM);
    return new Prediction(
        site.latitudeDeg(),
        NearMoon.HEIGHT_KM,
        ratios.nearMoonRatio(),
        ratios.orbitingMoonRatio(),
        ratios.ruleOfThumbPercent());
  }

  private int monthCount() {
    OwnResult.@Nullable Own months = ownMonths();
    return months == null ? 0 : months.monthCount();
  }

  /** By own altitudes alone where nobody's tables are to be asked. */
  private OwnResult.@Nullable Own ownMonths() {
    return selfReliant ? own.sightedAltitudes() : own.computedAltitudes();
  }

  private Basis ownBasis() {
    return selfReliant ? Basis.READINGS : Basis.COMPUTED_DIRECTIONS;
  }

  private Question withinANight() {
    return MeanRatio.observed(pairs)
        .map(mean -> question(100 * (mean.ratio() - 1), 100 * mean.uncertainty(), ratioBasis()))
        .orElseGet(() -> untold(ratioBasis()));
  }

  /**
   * Two readings make a ratio by themselves; more than two are laid along the computed growth of
   * that night. Alone, the readings speak by their twos.
   */
  private Basis ratioBasis() {
    return pairs.stream().allMatch(night -> night.readingCount() == 2)
        ? Basis.READINGS
        : Basis.COMPUTED_DISTANCES;
  }

  private Question withinAMonth() {
    OwnResult.@Nullable Own months = ownMonths();
    return months == null || months.monthCount() < 1
        ? untold(ownBasis())
        : question(months.swingPercent().value(), months.swingPercent().uncertainty(), ownBasis());
  }

  private static Question untold(Basis basis) {
    return new Question(Reply.TOO_FEW, null, null, null, basis);
  }

  private static Question question(double change, double uncertainty, Basis basis) {
    Reply reply =
        Math.abs(change) > LIMIT_SIGMAS * uncertainty ? Reply.CHANGES : Reply.NO_CHANGE_FOUND;
    return new Question(reply, change, uncertainty, LIMIT_SIGMAS * uncertainty, basis);
  }

  private List<Statement> statements() {
    List<Statement> all = new ArrayList<>();
    Optional<MeanRatio> mean = MeanRatio.observed(pairs);
    add(
        all,
        Quantity.NIGHT_RATIO,
        mean.map(MeanRatio::ratio).orElse(null),
        mean.map(MeanRatio::uncertainty).orElse(null),
        selfReliant ? null : nights.meanPredictedRatio(),
        selfReliant ? null : nights.verdict(),
        ratioBasis(),
        pairs.size());
    if (!selfReliant) {
      add(
          all,
          Quantity.NIGHT_GROWTH,
          nights.slope(),
          nights.slopeUncertainty(),
          1.0,
          nights.verdict(),
          Basis.COMPUTED_DISTANCES,
          nights.pairCount());
    }
    OwnResult.@Nullable Own months = ownMonths();
    if (months != null) {
      add(all, Quantity.MONTHLY_SWING, months.swingPercent(), months.monthCount());
    }
    if (!selfReliant) {
      add(
          all,
          Quantity.SWING_OVER_COMPUTED,
          cycle.swing().slope(),
          cycle.swing().slopeUncertainty(),
          1.0,
          cycle.swing().verdict(),
          Basis.COMPUTED_DISTANCES,
          cycle.readingCount());
    }
    if (months != null && months.distanceEarthRadii() != null) {
      add(all, Quantity.MOON_DISTANCE, months.distanceEarthRadii(), nights.pairCount());
    }
    if (months != null) {
      add(all, Quantity.ANOMALISTIC_MONTH, months.periodDays(), months.readingCount());
      add(all, Quantity.ECCENTRICITY, months.eccentricity(), months.readingCount());
    }
    CycleResult.@Nullable Quantity diameter = cycle.moonDiameterKm();
    if (!selfReliant && diameter != null) {
      all.add(
          new Statement(
              Quantity.MOON_DIAMETER,
              diameter.value(),
              diameter.uncertainty(),
              Quantity.MOON_DIAMETER.unit(),
              null,
              null,
              Basis.COMPUTED_DISTANCES,
              true,
              cycle.readingCount()));
    }
    return all;
  }

  private void add(List<Statement> all, Quantity quantity, CycleResult.Quantity figure, int count) {
    add(all, quantity, figure.value(), figure.uncertainty(), null, null, ownBasis(), count);
  }

  private static void add(
      List<Statement> all,
      Quantity quantity,
      @Nullable Double value,
      @Nullable Double uncertainty,
      @Nullable Double computed,
      @Nullable String verdict,
      Basis basis,
      int count) {
    if (value != null && uncertainty != null) {
      all.add(
          new Statement(
              quantity,
              value,
              uncertainty,
              quantity.unit(),
              computed,
              verdict,
              basis,
              false,
              count));
    }
  }

  private List<Outlook> outlook() {
    List<Outlook> all = new ArrayList<>();
    all.add(new Outlook(Quantity.NIGHT_RATIO, 1, nightsToTellGrowth(), Unit.NIGHT_PAIRS));
    if (!selfReliant) {
      all.add(
          pairs(
              Quantity.NIGHT_GROWTH,
              nights.slope() == null ? null : nights.slopeUncertainty(),
              GROWTH_TO));
      all.add(new Outlook(Quantity.HYPOTHESES, ODDS_TO, pairsForOdds(), Unit.NIGHT_PAIRS));
    }
    OwnResult.@Nullable Own months = ownMonths();
    if (selfReliant && months == null) {
      all.add(
          new Outlook(
              Quantity.MONTHLY_SWING,
              SWING_TO_PERCENT,
              (long) Math.max(0, LEAST_SIGHTED - own.sightedCount()),
              Unit.SIGHTED_ALTITUDES));
      return all;
    }
    CycleResult.@Nullable Quantity distance = months == null ? null : months.distanceEarthRadii();
    all.add(
        pairs(
            Quantity.MOON_DISTANCE,
            distance == null ? null : distance.uncertainty() / distance.value(),
            DISTANCE_TO));
    all.add(
        months(
            Quantity.MONTHLY_SWING,
            months == null ? null : months.swingPercent(),
            SWING_TO_PERCENT,
            2));
    all.add(
        months(
            Quantity.ECCENTRICITY,
            months == null ? null : months.eccentricity(),
            ECCENTRICITY_TO,
            2));
    all.add(
        months(
            Quantity.ANOMALISTIC_MONTH,
            months == null ? null : months.periodDays(),
            PERIOD_TO_D,
            2 / 3.0));
    return all;
  }

  /** From the pairs at hand, or from the noise of single readings; the growth is that computed. */
  private @Nullable Long nightsToTellGrowth() {
    if (withinANight().reply() == Reply.CHANGES) {
      return 0L;
    }
    Double ofOne = own.nightUncertainty();
    Double reading = own.readingUncertainty();
    if (ofOne == null && reading != null) {
      ofOne = NightsNeeded.ofOneNight(reading, Math.log(prediction.orbitingMoonRatio()));
    }
    return ofOne == null
        ? null
        : Math.max(0, NightsNeeded.toTell(ofOne, 1, POWER) - nights.pairCount());
  }

  private Outlook pairs(Quantity quantity, @Nullable Double uncertainty, double wanted) {
    Long more =
        uncertainty == null || nights.pairCount() == 0
            ? null
            : SampleSize.moreFor(nights.pairCount(), uncertainty, wanted);
    return new Outlook(quantity, wanted, more, Unit.NIGHT_PAIRS);
  }

  /** The logarithm of the odds grows as the pairs do. */
  private @Nullable Long pairsForOdds() {
    Double factor = judgement.hypotheses().log10BayesFactor();
    if (factor == null) {
      return null;
    }
    if (Math.abs(factor) >= ODDS_TO) {
      return 0L;
    }
    return nights.pairCount() == 0 || factor == 0
        ? null
        : (long) Math.ceil(nights.pairCount() * ODDS_TO / Math.abs(factor) - nights.pairCount());
  }

  /**
   * At the pace so far.
   *
   * @param power of the ratio of uncertainties by which the time grows: 2 for a mean, two thirds
   *     for a period, whose ends part as well
   */
  private Outlook months(
      Quantity quantity, CycleResult.@Nullable Quantity figure, double wanted, double power) {
    if (figure == null || own.spanDays() < DAYS_OF_A_MONTH) {
      return new Outlook(quantity, wanted, null, Unit.MONTHS);
    }
    double so = own.spanDays() / DAYS_OF_A_MONTH;
    double needed = so * Math.pow(figure.uncertainty() / wanted, power);
    return new Outlook(
        quantity, wanted, Math.max(0, (long) Math.ceil(needed - so - 1e-9)), Unit.MONTHS);
  }
}
