package org.limbspan.rig;

import java.util.Set;
import org.limbspan.scale.LengthUnit;

/** Tells the rig's part of the ledger in which units the readings of a setup were measured. */
public interface UnitsInUse {

  /** Units of the lengths that are held of a rig within a setup; none for standardised readings. */
  Set<LengthUnit> within(long rigId, Setup setup);
}
