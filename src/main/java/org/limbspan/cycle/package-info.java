/**
 * Pure: readings against prediction over months: swing, period, eccentricity, distance law, night
 * ratios, hypotheses. Residuals are natural logarithms of observed over predicted diameter.
 */
@NullMarked
package org.limbspan.cycle;

import org.jspecify.annotations.NullMarked;
