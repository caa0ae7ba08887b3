package org.limbspan.photo.file;

import org.limbspan.limb.ToneCurve;

/**
 * What a picture file tells before it is decoded.
 *
 * @param storedWidth columns as stored, before {@code shot.orientation()}
 * @param storedHeight rows as stored
 * @param bits of a sample, 8 or 16
 * @param bands samples a pixel, 1 to 4
 */
public record PhotoHeader(
    PhotoFormat format,
    int storedWidth,
    int storedHeight,
    int bits,
    int bands,
    ToneCurve curve,
    Shot shot) {

  /** Columns of the upright picture. */
  public int width() {
    return shot.orientation().isTransposed() ? storedHeight : storedWidth;
  }

  /** Rows of the upright picture. */
  public int height() {
    return shot.orientation().isTransposed() ? storedWidth : storedHeight;
  }
}
