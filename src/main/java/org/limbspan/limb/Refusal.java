package org.limbspan.limb;

/** Why a photograph gives no diameter. */
public enum Refusal {
  /** Nothing in it has a limb like the Moon's. */
  NO_MOON,
  /** Part of the sunlit limb is outside the picture. */
  CUT_BY_FRAME,
  /** The disc has too few pixels. */
  TOO_SMALL,
  /** Too narrow a crescent. */
  CRESCENT_TOO_THIN,
  /** The camera or the Moon moved during the exposure. */
  TRAILED,
  /** The limb is too soft. */
  OUT_OF_FOCUS,
  /** The limb is burnt out. */
  OVEREXPOSED,
  /** Cloud, roof or branches leave too little of the limb. */
  LIMB_HIDDEN
}
