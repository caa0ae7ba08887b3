package org.limbspan.platform;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class ConnectorConfiguration {

  @Bean
  WebServerFactoryCustomizer<TomcatServletWebServerFactory> sleepingConnector() {
    return factory -> factory.setProtocol(SleepingConnector.class.getName());
  }
}
