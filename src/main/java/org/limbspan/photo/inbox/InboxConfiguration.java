package org.limbspan.photo.inbox;

import java.nio.file.Path;
import java.time.Clock;
import org.limbspan.photo.Photos;
import org.limbspan.platform.HomeDirectory;
import org.limbspan.rig.Rigs;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Watches the inbox if the owner names one. */
@Configuration(proxyBeanMethods = false)
@ConditionalOnProperty("limbspan.inbox")
class InboxConfiguration {

  @Bean
  InboxWatch inboxWatch(
      @Value("${limbspan.inbox}") String inbox, Rigs rigs, Photos photos, Clock clock) {
    Path folder = HomeDirectory.resolved(inbox);
    return new InboxWatch(new Inbox(folder, rigs, photos, clock));
  }
}
