/**
 * What clients send, JSON or CSV, as checked values or named violations. Entry points {@link
 * org.limbspan.intake.JsonBody} and {@link org.limbspan.intake.CsvBody}; both give one {@link
 * org.limbspan.intake.Entry} at a time, so that a long file never lies in memory whole.
 */
@ApplicationModule(allowedDependencies = "platform")
@NullMarked
package org.limbspan.intake;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
