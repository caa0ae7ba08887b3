package org.limbspan.reading;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.limbspan.rig.OnConflict;

/** All versions of one reading, by version number, and what a further entry means to them. */
final class Versions {

  private final List<Version> byNumber = new ArrayList<>();

  /** What becomes of an entry. */
  enum Decision {
    STORE,
    /** It was entered before: it stands, was superseded or was taken back. */
    ALREADY_HELD,
    CONFLICT
  }

  void add(Version next) {
    byNumber.add(next);
  }

  int nextNumber() {
    return byNumber.isEmpty() ? 1 : byNumber.get(byNumber.size() - 1).reading().version() + 1;
  }

  /** What stands; empty if nothing was entered or the last entry was taken back. */
  Optional<RecordedReading> standing() {
    if (byNumber.isEmpty() || !byNumber.get(byNumber.size() - 1).isHeld()) {
      return Optional.empty();
    }
    return Optional.of(byNumber.get(byNumber.size() - 1).reading());
  }

  /**
   * An entry that was ever made is held, so that sending a file again never brings back what was
   * corrected since; only an entry that says it supersedes does.
   */
  Decision decide(NewReading entry) {
    if (entry.conflict() == OnConflict.SUPERSEDE) {
      boolean stands = standing().isPresent() && byNumber.get(byNumber.size() - 1).equalsIn(entry);
      return stands ? Decision.ALREADY_HELD : Decision.STORE;
    }
    if (byNumber.stream().anyMatch(version -> version.measuresLike(entry))) {
      return Decision.ALREADY_HELD;
    }
    return standing().isPresent() ? Decision.CONFLICT : Decision.STORE;
  }
}
