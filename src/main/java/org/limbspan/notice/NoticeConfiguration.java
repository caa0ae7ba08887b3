package org.limbspan.notice;

import java.time.Duration;
import org.limbspan.platform.jobs.Job;
import org.limbspan.platform.jobs.JobTimes;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(NoticeProperties.class)
class NoticeConfiguration {

  @Bean
  Job timedNoticeJob(TimedNotices notices) {
    return new Job(
        "timed-notices", JobTimes.every(Duration.ofMinutes(1)), stopping -> notices.write());
  }
}
