package org.limbspan.reading;

import io.prometheus.metrics.model.registry.Collector;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot;
import io.prometheus.metrics.model.snapshots.GaugeSnapshot.GaugeDataPointSnapshot;
import io.prometheus.metrics.model.snapshots.Labels;
import io.prometheus.metrics.model.snapshots.MetricSnapshot;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/**
 * How long ago each rig was last read, asked when somebody looks: rigs that another instance has
 * described are seen at once. The first of them by slug, no more: each is a series of its own.
 */
@Component
class LatestReadingMeter implements Collector {

  static final int MOST_RIGS = 50;

  private final LatestReadings latest;
  private final Clock clock;

  LatestReadingMeter(
      LatestReadings latest, Clock clock, ObjectProvider<PrometheusRegistry> registry) {
    this.latest = latest;
    this.clock = clock;
    registry.ifAvailable(its -> its.register(this));
  }

  @Override
  public MetricSnapshot collect() {
    Instant now = clock.instant();
    GaugeSnapshot.Builder ages =
        GaugeSnapshot.builder()
            .name("limbspan_latest_reading_age_seconds")
            .help("Time since the newest reading of a rig was taken");
    latest.bySlug().entrySet().stream()
        .filter(rig -> rig.getValue().isPresent())
        .limit(MOST_RIGS)
        .forEach(
            rig ->
                ages.dataPoint(
                    GaugeDataPointSnapshot.builder()
                        .labels(Labels.of("rig", rig.getKey()))
                        .value(
                            Duration.between(rig.getValue().orElseThrow(), now).toMillis() / 1000.0)
                        .build()));
    return ages.build();
  }
}
