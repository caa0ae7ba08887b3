/**
 * Runs {@code cycle} and {@code drift} over the ledger, reconciles findings with alerts, takes
 * answers. Entry point {@link org.limbspan.watch.Watch}.
 *
 * <p>All that it keeps is derived and can be thrown away, except the owner's answers, which are
 * facts of the ledger.
 */
@ApplicationModule(
    allowedDependencies = {
      "platform",
      "intake",
      "rig",
      "reading",
      "sky",
      "scale",
      "cycle",
      "drift"
    })
@NullMarked
package org.limbspan.watch;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
