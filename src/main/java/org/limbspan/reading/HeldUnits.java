package org.limbspan.reading;

import java.util.EnumSet;
import java.util.Set;
import org.limbspan.rig.Setup;
import org.limbspan.rig.UnitsInUse;
import org.limbspan.scale.LengthUnit;
import org.springframework.stereotype.Component;

/** Answers the rig's question which units the readings of a setup are in. */
@Component
class HeldUnits implements UnitsInUse {

  private final ReadingStore store;

  HeldUnits(ReadingStore store) {
    this.store = store;
  }

  @Override
  public Set<LengthUnit> within(long rigId, Setup setup) {
    Set<LengthUnit> units = EnumSet.noneOf(LengthUnit.class);
    for (LengthUnit unit : LengthUnit.values()) {
      if (store.isInUse(rigId, ReadingSpan.of(setup), unit)) {
        units.add(unit);
      }
    }
    return units;
  }
}
