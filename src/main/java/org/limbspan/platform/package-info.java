/** The ground floor: database (embedded or given), request guard, problems. */
@ApplicationModule(allowedDependencies = {"sky"})
@NullMarked
package org.limbspan.platform;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
