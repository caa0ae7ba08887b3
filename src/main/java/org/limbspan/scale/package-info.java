/**
 * Pure: calibrations to plate scale with uncertainty (GUM), lengths on a sensor or screen to
 * arcminutes.
 */
@NullMarked
package org.limbspan.scale;

import org.jspecify.annotations.NullMarked;
