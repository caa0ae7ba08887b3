package org.limbspan.limb;

/** Why a calibration photograph gives no length. */
public enum SheetRefusal {
  /** No bright four-sided patch stands out from its ground. */
  NO_SHEET,
  /** Part of the sheet is outside the picture. */
  CUT_BY_FRAME,
  /** The sheet has too few pixels. */
  TOO_SMALL,
  /** The edges are too soft. */
  OUT_OF_FOCUS,
  /** Something covers or breaks an edge, or the sheet is bent. */
  EDGE_DISTURBED,
  /** The sides' proportion is not that of the sheet: it leans, or it is another sheet. */
  TILTED
}
