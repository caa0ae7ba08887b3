package org.limbspan.platform;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.limbspan.sky.Ephemeris;
import org.limbspan.sky.Sky;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.io.ClassPathResource;

/** Reads the ephemeris from the class path, once. */
@Configuration(proxyBeanMethods = false)
class SkyConfiguration {

  @Bean
  Sky sky() throws IOException {
    byte[] file = new ClassPathResource("ephemeris/lnxp1980p2060.405").getContentAsByteArray();
    return Sky.of(Ephemeris.of(ByteBuffer.wrap(file)));
  }
}
