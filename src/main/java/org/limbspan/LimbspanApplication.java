package org.limbspan;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** The service: one process, one PostgreSQL. */
@SpringBootApplication
public class LimbspanApplication {

  public static void main(String[] args) {
    SpringApplication.run(LimbspanApplication.class, args);
  }
}
