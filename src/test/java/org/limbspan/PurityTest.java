package org.limbspan;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;

import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;

/** Holds the mathematics to mathematics: no framework, no I/O, no clock, no changing statics. */
@AnalyzeClasses(packages = "org.limbspan", importOptions = DoNotIncludeTests.class)
class PurityTest {

  private static final String[] PURE = {
    "org.limbspan.sky..",
    "org.limbspan.scale..",
    "org.limbspan.limb..",
    "org.limbspan.cycle..",
    "org.limbspan.drift.."
  };

  @ArchTest
  static final ArchRule pureCodeKnowsOnlyMathematics =
      classes()
          .that()
          .resideInAnyPackage(PURE)
          .should()
          .onlyDependOnClassesThat(
              resideInAnyPackage(
                      "java.lang..",
                      "java.math..",
                      "java.nio..",
                      "java.time..",
                      "java.util..",
                      "org.jspecify..",
                      "org.hipparchus..",
                      "org.orekit..")
                  .or(resideInAnyPackage(PURE))
                  .as("java.*, JSpecify, the mathematics libraries and pure packages"));

  /** Bytes, such as the ephemeris, are handed in as buffers. */
  @ArchTest
  static final ArchRule pureCodeReadsNothing =
      noClasses()
          .that()
          .resideInAnyPackage(PURE)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.io..", "java.nio.file..", "java.nio.channels..", "java.net..");

  @ArchTest
  static final ArchRule pureCodeHasNoClockOfItsOwn =
      noClasses()
          .that()
          .resideInAnyPackage(PURE)
          .should()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class)
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime");

  @ArchTest
  static final ArchRule pureCodeHasNoChangingStatics =
      noFields()
          .that()
          .areDeclaredInClassesThat()
          .resideInAnyPackage(PURE)
          .and()
          .areStatic()
          .should()
          .notHaveModifier(JavaModifier.FINAL);

  /** Pure packages point downward only: cycle and drift may use sky, and drift may use cycle. */
  @ArchTest
  static final ArchRule theSkyStandsAlone =
      noClasses()
          .that()
          .resideInAnyPackage("org.limbspan.sky..", "org.limbspan.scale..", "org.limbspan.limb..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.limbspan.cycle..", "org.limbspan.drift..");

  @ArchTest
  static final ArchRule cycleDoesNotKnowDrift =
      noClasses()
          .that()
          .resideInAnyPackage("org.limbspan.cycle..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.limbspan.drift..");
}
