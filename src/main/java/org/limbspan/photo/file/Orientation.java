package org.limbspan.photo.file;

/**
 * How the stored rows and columns lie in the upright picture: the tag of that name, values 1 to 8.
 *
 * <p>Source: Exif 2.32 (CIPA DC-008-2019), tag 274.
 */
public enum Orientation {
  UPRIGHT(false, false, false),
  MIRRORED(false, true, false),
  UPSIDE_DOWN(false, true, true),
  MIRRORED_UPSIDE_DOWN(false, false, true),
  TRANSPOSED(true, false, false),
  TURNED_RIGHT(true, true, false),
  TRANSVERSE(true, true, true),
  TURNED_LEFT(true, false, true);

  private final boolean transposed;
  private final boolean rowsReversed;
  private final boolean orderReversed;

  Orientation(boolean transposed, boolean rowsReversed, boolean orderReversed) {
    this.transposed = transposed;
    this.rowsReversed = rowsReversed;
    this.orderReversed = orderReversed;
  }

  /** The orientation of a tag's value; upright for values that the standard does not know. */
  static Orientation ofTag(int value) {
    return value >= 1 && value <= 8 ? values()[value - 1] : UPRIGHT;
  }

  /** Value of the tag. */
  public int tag() {
    return ordinal() + 1;
  }

  /** Whether a row of the upright picture is a stored column. */
  boolean isTransposed() {
    return transposed;
  }

  /** Whether a row of the upright picture runs against the order of the stored pixels. */
  boolean isRowReversed() {
    return rowsReversed;
  }

  /** The row of the upright picture that the stored row, or column, of that number is. */
  int uprightRow(int stored, int count) {
    return orderReversed ? count - 1 - stored : stored;
  }

  boolean isOrderReversed() {
    return orderReversed;
  }
}
