/** Readings: intake (JSON, CSV), the store, export. */
@ApplicationModule(allowedDependencies = {"platform", "intake", "rig", "sky", "scale", "limb"})
@NullMarked
package org.limbspan.reading;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
