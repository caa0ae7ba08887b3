/**
 * Sharing: a rig's readings out as a data package with a licence, and another observer's package in
 * as a guest, to compare with. Entry point {@link org.limbspan.share.Guests}.
 *
 * <p>A guest belongs to no ledger and is never judged.
 */
@ApplicationModule(
    allowedDependencies = {
      "platform",
      "intake",
      "rig",
      "reading",
      "watch",
      "sky",
      "scale",
      "cycle"
    })
@NullMarked
package org.limbspan.share;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
