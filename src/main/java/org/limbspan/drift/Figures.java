package org.limbspan.drift;

import java.time.Instant;
import java.util.Optional;
import org.limbspan.sky.Axis;

/** The figures that belong to one kind of finding. Uncertainties are standard uncertainties. */
public sealed interface Figures {

  /**
   * Of a {@code scale-step}: the mean residual before and after, in percent.
   *
   * @param supportedByCalibration whether a calibration since then shows the change as well
   */
  record Step(
      double beforePercent,
      double beforeUncertaintyPercent,
      double afterPercent,
      double afterUncertaintyPercent,
      boolean supportedByCalibration)
      implements Figures {}

  /**
   * Of a {@code scale-drift}: its rate, and what it amounts to up to its end or the last reading.
   */
  record Drift(
      double percentPer30Days,
      double uncertaintyPercentPer30Days,
      double totalPercent,
      double totalUncertaintyPercent)
      implements Figures {}

  /**
   * Of a {@code scatter-growth}: standard deviation of a reading after over before.
   *
   * @param factorFrom lower end of the interval of 95 percent
   * @param factorTo upper end of the interval of 95 percent
   */
  record Scatter(
      double factor, double factorFrom, double factorTo, double beforePercent, double afterPercent)
      implements Figures {}

  /**
   * Of a {@code calibration-conflict}.
   *
   * @param takenAt the calibration that disagrees; empty where all of them do, against the Moon
   * @param scaleDeviationPercent its plate scale against that of the others and of the Moon
   */
  record Calibration(
      Optional<Instant> takenAt, double scaleDeviationPercent, double uncertaintyPercent)
      implements Figures {}

  /**
   * Of an {@code altitude-trend}.
   *
   * @param loggedAxis axis under which the readings are logged
   * @param likelyAxis axis along which they seem to have been measured; empty where none fits
   * @param flatteningShare regression of the residuals on ln(vertical / horizontal diameter) as
   *     computed: 1 where vertical diameters were logged as horizontal, -1 the other way round
   */
  record Altitude(
      Axis loggedAxis,
      Optional<Axis> likelyAxis,
      double flatteningShare,
      double flatteningShareUncertainty)
      implements Figures {}

  /**
   * Of a {@code clock-suspect}.
   *
   * @param offsetHours logged instant minus true instant
   * @param belowHorizon readings logged while the Moon was below the horizon
   * @param sightedAltitudeErrorDeg median of sighted minus computed altitude; 0 where none was
   *     sighted
   */
  record Clock(double offsetHours, int belowHorizon, double sightedAltitudeErrorDeg)
      implements Figures {}

  /**
   * Of a {@code swing-departure} or {@code ratio-departure}: the regression of the observed on the
   * predicted logarithm of size; 1 where all is as predicted.
   */
  record Departure(double slope, double slopeUncertainty) implements Figures {}
}
