/** Rigs, setups and calibrations: the part of the ledger that describes the instrument. */
@ApplicationModule(allowedDependencies = {"platform", "intake", "sky", "scale"})
@NullMarked
package org.limbspan.rig;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
