/** The pages. */
@ApplicationModule(
    allowedDependencies = {
      "platform",
      "rig",
      "reading",
      "photo",
      "watch",
      "notice",
      "share",
      "intake",
      "demo",
      "sky",
      "scale",
      "cycle",
      "drift"
    })
@NullMarked
package org.limbspan.dashboard;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
