package org.limbspan.archive;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalTime;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.platform.StartRefused;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.springframework.util.unit.DataSize;

/**
 * What the owner says about the copies that the service makes by itself.
 *
 * @param directory where they are kept; in the home if it is not given
 * @param at time of day in the zone of the computer
 * @param spread how much later it may be
 * @param photographs whether the photographs' files go with every copy
 * @param reserve what a copy must leave on the disk
 */
@ConfigurationProperties("limbspan.copies")
record CopyProperties(
    @DefaultValue("true") boolean enabled,
    @Nullable String directory,
    @DefaultValue("03:00") String at,
    @DefaultValue("20m") Duration spread,
    @DefaultValue("false") boolean photographs,
    @DefaultValue("1GB") DataSize reserve) {

  LocalTime timeOfDay() {
    try {
      return LocalTime.parse(at);
    } catch (DateTimeException e) {
      throw new StartRefused(
          "limbspan.copies.at is '" + at + "'.", "Give a time of day such as 03:00.", e);
    }
  }

  Path folder(HomeDirectory home) {
    return directory == null || directory.isBlank()
        ? home.path().resolve("copies")
        : HomeDirectory.resolved(directory);
  }
}
