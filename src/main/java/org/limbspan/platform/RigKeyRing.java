package org.limbspan.platform;

import java.util.Optional;

/** Knows whose a rig key is. */
public interface RigKeyRing {

  /** Slug of the rig that a key opens, if it is one and was not revoked. */
  Optional<String> rigOf(String key);
}
