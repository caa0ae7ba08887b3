package org.limbspan.rig;

import java.time.Clock;
import java.util.Optional;
import org.limbspan.platform.GuestBook;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Links with which somebody looks at a rig's ledger. */
@Service
class GuestLinks extends HashedWords implements GuestBook {

  GuestLinks(JdbcClient jdbc, Clock clock) {
    super(jdbc, clock, "guest_link", "limbspan-guest-", "guest link");
  }

  @Override
  @Transactional(readOnly = true)
  public Optional<String> rigFor(String word) {
    return rigOf(word);
  }
}
