package org.limbspan.platform.jobs;

import io.micrometer.core.instrument.MeterRegistry;
import java.time.Clock;
import javax.sql.DataSource;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(JobProperties.class)
class JobConfiguration {

  /** Stopped before what the jobs use, and so before the pool closes: it depends on all of it. */
  @Bean(destroyMethod = "stop")
  Jobs jobs(
      DataSource source,
      Clock clock,
      JobProperties properties,
      MeterRegistry registry,
      ObjectProvider<Job> jobs) {
    return new Jobs(source, clock, properties, registry, jobs.stream().toList());
  }
}
