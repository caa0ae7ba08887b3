package org.limbspan.platform;

import java.util.Optional;

/** Knows which rig's ledger a guest may look at. */
public interface GuestBook {

  /** Name of the cookie in which a guest's browser keeps the word of its link. */
  String COOKIE = "limbspan-guest";

  /** Slug of the rig that a link shows, if it is one and was not revoked. */
  Optional<String> rigFor(String word);
}
