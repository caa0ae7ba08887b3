package org.limbspan.dashboard;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.limbspan.dashboard.ConclusionsSheet.Figure;
import org.limbspan.dashboard.ConclusionsSheet.Hypothesis;
import org.limbspan.dashboard.ConclusionsSheet.Outlook;
import org.limbspan.scale.Measured;
import org.limbspan.watch.Conclusions;
import org.limbspan.watch.Conclusions.Prediction;
import org.limbspan.watch.Conclusions.Question;
import org.limbspan.watch.Conclusions.Statement;
import org.limbspan.watch.Conclusions.Support;
import org.limbspan.watch.HypothesesResult;

/** Puts the conclusions into words: what the readings say, and no more. */
final class ConclusionsSheets {

  private static final String LEFT_OUT =
      "Left out, since they rest on somebody else\u2019s tables: what is computed for each night"
          + " and month, the Moon\u2019s true diameter (it needs a distance in kilometres), and"
          + " the odds of the two hypotheses. Still used: the length of the month of the phases"
          + " and of the year, as anybody can count them, and a mean refraction for an altitude.";

  private ConclusionsSheets() {}

  static ConclusionsSheet of(Conclusions told) {
    return new ConclusionsSheet(
        told.selfReliant(),
        margin(told),
        List.of(withinANight(told), withinAMonth(told)),
        told.statements().stream().map(ConclusionsSheets::figure).toList(),
        told.selfReliant() ? LEFT_OUT : "",
        hypotheses(told.predictions(), told.hypotheses()),
        support(told),
        told.hypotheses() == null
            ? List.of()
            : told.hypotheses().sensitivity().stream().map(NightsSheets::sensitivity).toList(),
        told.outlook().stream().map(each -> outlook(each, told)).toList());
  }

  private static List<LedgerSheet.Dated> margin(Conclusions told) {
    List<LedgerSheet.Dated> margin = new ArrayList<>();
    margin.add(new LedgerSheet.Dated("rests on", Typeset.count(told.readingCount(), "reading")));
    margin.add(new LedgerSheet.Dated("with", Typeset.count(told.pairCount(), "night pair")));
    margin.add(new LedgerSheet.Dated("over", Typeset.count(Math.round(told.spanDays()), "day")));
    margin.add(new LedgerSheet.Dated("altitudes sighted", Typeset.whole(told.sightedCount())));
    return margin;
  }

  private static ConclusionsSheet.Question withinANight(Conclusions told) {
    Question question = told.withinANight();
    List<String> words = new ArrayList<>();
    words.add(
        change(
            question,
            "From low to high in one pass the disc grows by ",
            "From low to high in one pass the disc shrinks by ",
            "No pass has a low and a high reading yet: that takes two readings of one night, one"
                + " with the Moon low, one with it high."));
    if (question.changePercent() != null) {
      words.add(
          "That is the mean of "
              + Typeset.count(told.pairCount(), "night pair")
              + ", each weighted by what it can tell. Plate scale and month cancel in a pair.");
    }
    for (Statement each : told.statements()) {
      if (each.quantity() == Conclusions.Quantity.NIGHT_GROWTH) {
        words.add(compared("Of the growth computed for these nights", each));
      }
    }
    return new ConclusionsSheet.Question(
        "Does the size change within a night?", reply(question), words);
  }

  private static ConclusionsSheet.Question withinAMonth(Conclusions told) {
    Question question = told.withinAMonth();
    List<String> words = new ArrayList<>();
    words.add(
        change(
            question,
            "At its largest in a month the disc is larger than at its smallest by ",
            "At its largest in a month the disc is smaller than at its smallest by ",
            told.selfReliant()
                ? "By sighted altitudes alone the readings draw no monthly curve yet: "
                    + Typeset.count(told.sightedCount(), "reading")
                    + " with an altitude sighted by the observer; eight are the least, spread over"
                    + " a month and more."
                : "The readings draw no monthly curve yet: eight are the least, spread over a"
                    + " month and more."));
    if (question.changePercent() != null) {
      words.add(
          "That is the mean of "
              + Typeset.count(told.monthCount(), "month")
              + ", from the curve that the readings draw by themselves.");
    }
    for (Statement each : told.statements()) {
      if (each.quantity() == Conclusions.Quantity.SWING_OVER_COMPUTED) {
        words.add(compared("Of the change computed for these months", each));
      }
    }
    return new ConclusionsSheet.Question(
        "Does the size change within a month?", reply(question), words);
  }

  private static String reply(Question question) {
    return switch (question.reply()) {
      case CHANGES -> "Yes.";
      case NO_CHANGE_FOUND -> "No change found so far.";
      case TOO_FEW -> "The readings cannot tell yet.";
    };
  }

  private static String change(Question question, String grows, String shrinks, String untold) {
    Double percent = question.changePercent();
    Double uncertainty = question.uncertaintyPercent();
    Double tellable = question.tellablePercent();
    if (percent == null || uncertainty == null || tellable == null) {
      return untold;
    }
    String figure = Typeset.pair(new Measured(Math.abs(percent), uncertainty)) + " percent.";
    return question.reply() == Conclusions.Reply.CHANGES
        ? (percent > 0 ? grows : shrinks) + figure
        : "The change is "
            + Typeset.signedPair(new Measured(percent, uncertainty))
            + " percent; one of more than "
            + Typeset.places(tellable, 2)
            + " percent would have been found.";
  }

  private static String compared(String of, Statement statement) {
    String share = Typeset.pair(new Measured(statement.value(), statement.uncertainty()));
    String verdict =
        switch (statement.verdict() == null ? "" : statement.verdict()) {
          case "agrees" -> "the readings agree with it";
          case "departs" -> "the readings depart from it";
          default -> "too uncertain to tell";
        };
    return of + " the readings show " + share + " times: " + verdict + ".";
  }

  private static Figure figure(Statement each) {
    return new Figure(
        quantity(each.quantity()),
        Typeset.pair(new Measured(each.value(), each.uncertainty())),
        each.computed() == null
            ? ""
            : new Measured(each.computed(), each.uncertainty()).valueText(),
        each.verdict() == null ? "" : MonthTable.verdict(each.verdict()),
        basis(each));
  }

  private static String quantity(Conclusions.Quantity quantity) {
    return switch (quantity) {
      case NIGHT_RATIO -> "high over low size of a pass, mean";
      case NIGHT_GROWTH -> "growth within a night, observed over computed";
      case MONTHLY_SWING -> "monthly swing, mean, %";
      case SWING_OVER_COMPUTED -> "monthly swing, observed over computed";
      case MOON_DISTANCE -> "distance of the Moon, Earth radii";
      case ANOMALISTIC_MONTH -> "anomalistic month, d";
      case ECCENTRICITY -> "eccentricity of the orbit";
      case MOON_DIAMETER -> "diameter of the Moon, km";
      case HYPOTHESES -> "the two hypotheses";
    };
  }

  private static String basis(Statement each) {
    String tables =
        switch (each.basis()) {
          case READINGS -> "own readings alone";
          case COMPUTED_DIRECTIONS -> "own readings; altitudes computed, no distance";
          case COMPUTED_DISTANCES -> "own readings against computed distances";
        };
    return each.calibrated() ? tables + "; as good as the calibration" : tables;
  }

  private static List<Hypothesis> hypotheses(Prediction prediction, @Nullable Support support) {
    return List.of(
        new Hypothesis(
            "orbiting Moon",
            "a sphere some 384\u202f400 km away; the observer comes nearer by up to an Earth radius",
            Typeset.places(prediction.orbitingMoonRatio(), 4),
            likelihood("orbiting-moon", support)),
        new Hypothesis(
            "near Moon",
            Typeset.whole(Math.round(prediction.nearMoonHeightKm()))
                + " km above a flat ground mapped about the north pole",
            Typeset.places(prediction.nearMoonRatio(), 2),
            likelihood("near-moon", support)));
  }

  private static String likelihood(String name, @Nullable Support support) {
    return support == null
        ? ""
        : support.hypotheses().stream()
            .filter(each -> each.name().equals(name))
            .map(HypothesesResult.Hypothesis::logLikelihood)
            .map(natural -> Typeset.places(natural / Math.log(10), 1))
            .findFirst()
            .orElse("");
  }

  private static List<String> support(Conclusions told) {
    Support support = told.hypotheses();
    if (support != null) {
      return NightsSheets.verdict(support.log10BayesFactor());
    }
    Double change = told.withinANight().changePercent();
    Double uncertainty = told.withinANight().uncertaintyPercent();
    if (change == null || uncertainty == null) {
      return List.of("There is nothing to compare yet.");
    }
    return List.of(
        "The mean ratio of this rig\u2019s own pairs is "
            + Typeset.pair(new Measured(1 + change / 100, uncertainty / 100))
            + ". Its pairs reach neither the horizon nor always the culmination, so that either"
            + " hypothesis expects somewhat less than its figure above.");
  }

  private static Outlook outlook(Conclusions.Outlook each, Conclusions told) {
    return new Outlook(wish(each), more(each, told));
  }

  private static String wish(Conclusions.Outlook each) {
    return switch (each.quantity()) {
      case NIGHT_RATIO -> "whether the disc grows within a night";
      case NIGHT_GROWTH -> "its growth within a night to a tenth of that computed";
      case HYPOTHESES -> "the two hypotheses apart by 100 to 1";
      case MOON_DISTANCE -> "the Moon\u2019s distance to 1 percent";
      case MONTHLY_SWING -> "the mean monthly swing to 0.1 percent of the size";
      case ECCENTRICITY -> "the eccentricity to 0.0005";
      case ANOMALISTIC_MONTH -> "the anomalistic month to 0.01 d";
      case SWING_OVER_COMPUTED, MOON_DIAMETER -> quantity(each.quantity());
    };
  }

  private static String more(Conclusions.Outlook each, Conclusions told) {
    Long more = each.more();
    if (more == null) {
      return missing(each, told);
    }
    if (each.unit() == Conclusions.Unit.SIGHTED_ALTITUDES) {
      return more > 0
          ? Typeset.count(more, "more reading") + " with a sighted altitude, at least"
          : "sighted altitudes spread over a month and more";
    }
    if (more == 0) {
      return "told already";
    }
    return switch (each.unit()) {
      case NIGHT_PAIRS -> Typeset.count(more, "more night pair");
      case MONTHS, SIGHTED_ALTITUDES -> Typeset.count(more, "more month") + " at the pace so far";
    };
  }

  private static String missing(Conclusions.Outlook each, Conclusions told) {
    if (told.readingCount() == 0) {
      return "no reading yet: the rig\u2019s own noise is not known";
    }
    return each.unit() == Conclusions.Unit.NIGHT_PAIRS
        ? "night pairs are missing to go by"
        : "a monthly curve is missing to go by";
  }
}
