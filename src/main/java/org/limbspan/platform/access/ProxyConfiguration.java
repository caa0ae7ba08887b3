package org.limbspan.platform.access;

import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.catalina.valves.RemoteIpValve;
import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Takes the word of the named reverse proxies, and of nobody else, on client and scheme. */
@Configuration(proxyBeanMethods = false)
class ProxyConfiguration {

  @Bean
  WebServerFactoryCustomizer<TomcatServletWebServerFactory> namedProxies(
      AccessProperties properties) {
    return factory -> {
      factory.addContextCustomizers(
          context -> {
            context.setSessionTimeout((int) Math.max(1, properties.login().idle().toMinutes()));
            context.setSessionCookieName("limbspan-login");
            context.setUseHttpOnly(true);
          });
      if (!properties.proxies().isEmpty()) {
        RemoteIpValve valve = new RemoteIpValve();
        valve.setInternalProxies(
            properties.proxies().stream().map(Pattern::quote).collect(Collectors.joining("|")));
        valve.setTrustedProxies(null);
        valve.setRemoteIpHeader("X-Forwarded-For");
        valve.setProtocolHeader("X-Forwarded-Proto");
        factory.addEngineValves(valve);
      }
    };
  }
}
