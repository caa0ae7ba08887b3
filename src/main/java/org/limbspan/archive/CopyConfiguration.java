package org.limbspan.archive;

import java.security.SecureRandom;
import java.time.Clock;
import java.time.ZoneId;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.platform.jobs.Job;
import org.limbspan.platform.jobs.JobTimes;
import org.limbspan.rig.Rigs;
import org.springframework.boot.autoconfigure.condition.ConditionalOnBooleanProperty;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Every night, unless the owner does not want it. */
@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(CopyProperties.class)
class CopyConfiguration {

  static final String JOB = "ledger-copies";

  @Bean
  LedgerCopies ledgerCopies(
      Rigs rigs,
      ArchiveWriter writer,
      ArchiveReader reader,
      CopyProperties properties,
      HomeDirectory home,
      Clock clock) {
    return new LedgerCopies(rigs, writer, reader, properties, home, clock, ZoneId.systemDefault());
  }

  @Bean
  @ConditionalOnBooleanProperty(name = "limbspan.copies.enabled", matchIfMissing = true)
  Job ledgerCopyJob(LedgerCopies copies, CopyProperties properties) {
    return new Job(
        JOB,
        JobTimes.daily(
            properties.timeOfDay(),
            ZoneId.systemDefault(),
            properties.spread(),
            new SecureRandom()),
        copies::make);
  }
}
