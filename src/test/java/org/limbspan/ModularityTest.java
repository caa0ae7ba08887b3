package org.limbspan;

import org.junit.jupiter.api.Test;
import org.springframework.modulith.core.ApplicationModules;
import org.springframework.modulith.docs.Documenter;

/** Holds the arrows between the modules to the plan; draws them into target. */
class ModularityTest {

  private final ApplicationModules modules = ApplicationModules.of(LimbspanApplication.class);

  @Test
  void modulesKeepToTheirDeclaredDependencies() {
    modules.verify();
  }

  @Test
  void drawsTheModulesIntoTheBuildDirectory() {
    new Documenter(modules).writeModulesAsPlantUml();
  }
}
