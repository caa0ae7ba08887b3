package org.limbspan.platform.reads;

import java.time.Duration;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.StartRefused;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Where pages read, and how long they wait.
 *
 * @param standbyUrl JDBC address of a hot standby of the database; without it the primary is read
 * @param standbyUsername as on the primary if it is not given
 * @param standbyPassword as on the primary if it is not given
 * @param mostBehind a standby that may lack what was committed longer ago than that is not read; 1
 *     s or more
 * @param patience how long a page waits for a database that is silent; 1 s or more
 */
@ConfigurationProperties("limbspan.reads")
record ReadProperties(
    @Nullable String standbyUrl,
    @Nullable String standbyUsername,
    @Nullable String standbyPassword,
    @DefaultValue("3s") Duration mostBehind,
    @DefaultValue("10s") Duration patience) {

  private static final String JDBC = "jdbc:postgresql:";

  ReadProperties {
    if (standbyUrl != null && !standbyUrl.isBlank() && !standbyUrl.startsWith(JDBC)) {
      throw new StartRefused(
          "limbspan.reads.standby-url is '" + standbyUrl + "'.",
          "Give a JDBC address such as jdbc:postgresql://HOST/DATABASE.");
    }
    requireASecond("most-behind", mostBehind);
    requireASecond("patience", patience);
  }

  private static void requireASecond(String name, Duration value) {
    if (value.compareTo(Duration.ofSeconds(1)) < 0) {
      throw new StartRefused(
          "limbspan.reads." + name + " is " + value + ".", "Give 1s or more, such as 5s.");
    }
  }
}
