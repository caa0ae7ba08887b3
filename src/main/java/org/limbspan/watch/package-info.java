/**
 * Runs {@code cycle} and {@code drift} over the ledger, reconciles findings with alerts, takes
 * answers.
 */
@ApplicationModule(
    allowedDependencies = {"platform", "rig", "reading", "sky", "scale", "cycle", "drift"})
@NullMarked
package org.limbspan.watch;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
