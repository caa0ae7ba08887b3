package org.limbspan.bench.service;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.SpringBootConfiguration;
import org.springframework.boot.autoconfigure.ImportAutoConfiguration;
import org.springframework.boot.tomcat.autoconfigure.servlet.TomcatServletWebServerAutoConfiguration;
import org.springframework.boot.webmvc.autoconfigure.DispatcherServletAutoConfiguration;
import org.springframework.boot.webmvc.autoconfigure.WebMvcAutoConfiguration;

/** A web service of the same framework that does nothing, to compare with. */
@SpringBootConfiguration
@ImportAutoConfiguration({
  TomcatServletWebServerAutoConfiguration.class,
  DispatcherServletAutoConfiguration.class,
  WebMvcAutoConfiguration.class
})
public class EmptyService {

  public static void main(String[] args) {
    SpringApplication.run(EmptyService.class, args);
  }
}
