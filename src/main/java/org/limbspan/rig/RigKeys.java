package org.limbspan.rig;

import java.time.Clock;
import org.limbspan.platform.RigKeyRing;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;

/** Keys with which a rig's own computer sends. */
@Service
class RigKeys extends HashedWords implements RigKeyRing {

  RigKeys(JdbcClient jdbc, Clock clock) {
    super(jdbc, clock, "rig_key", "limbspan-rig-", "key");
  }
}
