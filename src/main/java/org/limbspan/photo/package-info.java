/**
 * Photographs: from a camera's file to a reading. Entry point {@link org.limbspan.photo.Photos}.
 *
 * <p>Photographs and measurements are facts and only ever added; which photographs make one reading
 * follows from them.
 */
@ApplicationModule(
    allowedDependencies = {"platform", "intake", "rig", "reading", "sky", "scale", "limb"})
@NullMarked
package org.limbspan.photo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
