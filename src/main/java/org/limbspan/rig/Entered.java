package org.limbspan.rig;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * The answer to an entry: the fact as it stands and whether it was held already.
 *
 * @param <T> kind of fact
 */
public record Entered<T>(T fact, Outcome outcome) {

  /** What became of an entry. */
  public enum Outcome {
    @JsonProperty("stored")
    STORED,
    @JsonProperty("already-held")
    ALREADY_HELD,
    /** It was entered before and taken back since; sending it again does not bring it back. */
    @JsonProperty("held-as-withdrawn")
    HELD_AS_WITHDRAWN
  }
}
