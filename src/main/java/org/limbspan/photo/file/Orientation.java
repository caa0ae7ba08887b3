package org.limbspan.photo.file;

/**
 * How the stored rows and columns lie in the upright picture: the tag of that name, values 1 to 8.
 *
 * <p>Source: Exif 2.32 (CIPA DC-008-2019), tag 274.
 */
public enum Orientation {
  UPRIGHT(1, false, false, false),
  MIRRORED(2, false, true, false),
  UPSIDE_DOWN(3, false, true, true),
  MIRRORED_UPSIDE_DOWN(4, false, false, true),
  TRANSPOSED(5, true, false, false),
  TURNED_RIGHT(6, true, true, false),
  TRANSVERSE(7, true, true, true),
  TURNED_LEFT(8, true, false, true);

  private final int tag;
  private final boolean transposed;
  private final boolean rowsReversed;
  private final boolean orderReversed;

  Orientation(int tag, boolean transposed, boolean rowsReversed, boolean orderReversed) {
    this.tag = tag;
    this.transposed = transposed;
    this.rowsReversed = rowsReversed;
    this.orderReversed = orderReversed;
  }

  /** The orientation of a tag's value; upright for values that the standard does not know. */
  static Orientation ofTag(int value) {
    for (Orientation orientation : values()) {
      if (orientation.tag == value) {
        return orientation;
      }
    }
    return UPRIGHT;
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
