/**
 * A rig's whole ledger as one file of open formats, out and in: CSV (RFC 4180) in a zip with a
 * {@code datapackage.json} (Frictionless Data Package). What it holds is told by the {@link
 * org.limbspan.platform.LedgerPart}s of the other modules; this one only carries.
 */
@ApplicationModule(allowedDependencies = {"platform", "platform :: jobs", "rig"})
@NullMarked
package org.limbspan.archive;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
