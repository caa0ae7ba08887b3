/**
 * Pure: change detection on the residuals of a setup: steps, slopes, scatter, calibration
 * conflicts.
 */
@NullMarked
package org.limbspan.drift;

import org.jspecify.annotations.NullMarked;
