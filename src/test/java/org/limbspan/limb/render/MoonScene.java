package org.limbspan.limb.render;

/**
 * What is to be rendered: an invented photograph of the Moon, with its truth known. A mutable
 * description, filled in by the test that draws it.
 */
public final class MoonScene {

  public int width = 1400;
  public int height = 1120;
  public double centreX = 690;
  public double centreY = 545;

  /** Half the horizontal diameter, pixels. */
  public double radiusPx = 420;

  /** Apparent altitude of the disc's centre, degrees; NaN for a Moon without refraction. */
  public double altitudeDeg = Double.NaN;

  /** Clockwise turn of the horizon in the image, degrees. */
  public double rollDeg;

  /** Illuminated fraction of the disc, 0 to 1. */
  public double illuminated = 1;

  /** Direction of the bright limb: degrees counter-clockwise from the image's right. */
  public double brightLimbDeg;

  /** Share of Lommel-Seeliger in the phase law; the rest is Lambert's. */
  public double lommelSeeliger = 1;

  /** Scale of the uneven ground that frays the terminator; 1 is usual. */
  public double roughness = 1;

  /** Scale of the contrast between maria and highlands; 1 is usual. */
  public double markings = 1;

  public double fwhmPx = 3;

  /** Share of the light in a wide wing of the point-spread function. */
  public double wing = 0.04;

  /** Mean brightness of the sunlit limb over the noise of one pixel there. */
  public double signalToNoise = 80;

  /** Linear level that the limb would have, 1 being saturation. */
  public double exposure = 0.6;

  public double ripplePx;
  public double rippleCorrelationDeg = 4;

  /** Root mean square of the limb relief, as a fraction of the radius. */
  public double relief;

  public double reliefCorrelationDeg = 12;

  /** Sky brightness over limb brightness, and its change from the left to the right edge. */
  public double sky = 0.003;

  public double skyGradient;

  /** 0 for none, 1 for a thick bank over part of the disc. */
  public double cloud;

  /** Share of the disc's height hidden from below by a roof line; 0 for none. */
  public double roof;

  /** Number of branches before the disc. */
  public int branches;

  public boolean planet;
  public int hotPixels;

  /** Length of the trail in pixels, and its direction in degrees from the image's right. */
  public double trailPx;

  public double trailDeg;

  /** Relative brightness of red, green and blue. */
  public double[] tint = {1.03, 1.0, 0.93};

  /** Relative magnification of red against green, and of green against blue (lateral colour). */
  public double lateralColour;

  /** Unsharp masking in the encoded image: amount, with a radius of 1.5 px. */
  public double sharpening;

  public long seed = 1;

  /** Apparent vertical diameter in pixels, by the refraction that the renderer itself applies. */
  public double verticalDiameterPx() {
    return new SkyBend(altitudeDeg, radiusPx).verticalDiameterPx();
  }

  public double horizontalDiameterPx() {
    return 2 * radiusPx;
  }
}
