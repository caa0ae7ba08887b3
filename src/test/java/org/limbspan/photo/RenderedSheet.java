package org.limbspan.photo;

import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.SheetRenderer;

/**
 * Invented photographs of a calibration target. It has the sides of ISO 216 A4, 297 mm and 210 mm,
 * the tall one {@value #TALL_PX} px long where it stands upright.
 */
public final class RenderedSheet {

  public static final double TALL_PX = 280;

  private RenderedSheet() {}

  public static byte[] jpeg(double leanDeg, ExifBlock exif) {
    SheetRenderer renderer = new SheetRenderer();
    renderer.width = 600;
    renderer.height = 520;
    renderer.centreX = 301.3;
    renderer.centreY = 258.7;
    renderer.tallPx = TALL_PX;
    renderer.shortPx = TALL_PX * 210 / 297;
    renderer.fwhmPx = 2.2;
    renderer.leanDeg = leanDeg;
    return PictureBytes.jpeg(JpegFile.bytes(renderer.render(), 95), exif);
  }
}
