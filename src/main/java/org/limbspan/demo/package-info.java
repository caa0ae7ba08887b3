/**
 * An invented rig in an invented garden, to look at before one describes one's own, and two more on
 * two continents, with mistakes that are found and put right. All of it is made up, drawn from the
 * computed Moon and a fixed random stream, and marked as invented wherever it is shown.
 */
@ApplicationModule(allowedDependencies = {"platform", "rig", "reading", "watch", "sky", "scale"})
@NullMarked
package org.limbspan.demo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
