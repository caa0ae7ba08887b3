package org.limbspan.demo;

import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Fills the demo's own home at its start. */
@Component
@Profile("demo")
class DemoStart implements ApplicationRunner {

  private final Demo demo;

  DemoStart(Demo demo) {
    this.demo = demo;
  }

  @Override
  public void run(ApplicationArguments arguments) {
    demo.enter();
  }
}
