package org.limbspan.limb.render;

import java.awt.image.BufferedImage;
import java.util.Random;

/**
 * Draws a {@link MoonScene}: a sphere under a phase law, sampled by area, seen through refraction,
 * seeing and optics, then exposed, encoded and quantised like a camera's image. Knows nothing of
 * the code that measures it.
 */
public final class MoonRenderer {

  private static final float[] CURVE = curve();

  private final MoonScene scene;
  private final MoonSurface surface;
  private final SkyBend bend;
  private final LimbNoise ripple;
  private final LimbNoise relief;
  private final SkyAndForeground around;
  private final double level;

  public MoonRenderer(MoonScene scene) {
    this.scene = scene;
    surface = new MoonSurface(scene);
    bend = new SkyBend(scene.altitudeDeg, scene.radiusPx);
    ripple = new LimbNoise(scene.ripplePx, scene.rippleCorrelationDeg, scene.seed * 13 + 5);
    relief = new LimbNoise(scene.relief, scene.reliefCorrelationDeg, scene.seed * 19 + 9);
    around = new SkyAndForeground(scene);
    level = surface.brightLevel();
  }

  /** The encoded photograph, 8 bits a channel, before any file format. */
  public BufferedImage render() {
    float[][] light = new float[3][];
    light[1] = radiance(1);
    if (scene.lateralColour == 0) {
      light[0] = light[1];
      light[2] = light[1];
    } else {
      light[0] = radiance(1 + scene.lateralColour);
      light[2] = radiance(1 - scene.lateralColour);
    }
    return expose(light);
  }

  private float[] radiance(double magnification) {
    int width = scene.width;
    int height = scene.height;
    float[] plane = new float[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        double clear = around.clear(x, y);
        double moon = moon(x, y, magnification) / level * around.cloudTransmission(x, y);
        plane[y * width + x] = (float) (clear * (moon + around.glow(x, y)) + (1 - clear) * 0.002);
      }
    }
    return throughOptics(plane);
  }

  private double moon(int x, int y, double magnification) {
    double near = depth(x, y, magnification);
    if (near < -2) {
      return 0;
    }
    if (near > 2) {
      return sample(x, y, magnification);
    }
    int fine = 6;
    double sum = 0;
    for (int j = 0; j < fine; j++) {
      for (int i = 0; i < fine; i++) {
        sum += sample(x + (i + 0.5) / fine - 0.5, y + (j + 0.5) / fine - 0.5, magnification);
      }
    }
    return sum / (fine * fine);
  }

  private double depth(double x, double y, double magnification) {
    double[] d = disc(x, y, magnification);
    return (1 - Math.hypot(d[0], d[1])) * scene.radiusPx * 0.85;
  }

  private double sample(double x, double y, double magnification) {
    double[] d = disc(x, y, magnification);
    return d[0] * d[0] + d[1] * d[1] < 1 ? surface.at(d[0], d[1]) : 0;
  }

  /** Place on the disc in radii of the local limb, x right and y up along the horizon's axes. */
  private double[] disc(double x, double y, double magnification) {
    double dx = (x - scene.centreX) / magnification;
    double dy = (y - scene.centreY) / magnification;
    double roll = Math.toRadians(scene.rollDeg);
    double along = dx * Math.cos(roll) + dy * Math.sin(roll);
    double up = dx * Math.sin(roll) - dy * Math.cos(roll);
    double u = along / scene.radiusPx;
    double v = bend.discHeight(up);
    double angle = Math.atan2(v, u);
    double limb = 1 + relief.at(angle) + ripple.at(angle) / scene.radiusPx;
    return new double[] {u / limb, v / limb};
  }

  private float[] throughOptics(float[] plane) {
    int width = scene.width;
    int height = scene.height;
    float[] source = plane;
    if (scene.trailPx > 0) {
      source = Blur.trail(plane, width, height, scene.trailPx, scene.trailDeg);
    }
    float[] core = Blur.gaussian(source, width, height, scene.fwhmPx / 2.3548);
    if (scene.wing > 0) {
      float[] wide = Blur.gaussian(source, width, height, 1.6 * scene.fwhmPx);
      float[] wider = Blur.wide(source, width, height, 8);
      for (int i = 0; i < core.length; i++) {
        core[i] += (float) (scene.wing * (0.7 * wide[i] + 0.3 * wider[i] - core[i]));
      }
    }
    return core;
  }

  private BufferedImage expose(float[][] light) {
    int width = scene.width;
    int height = scene.height;
    Random random = new Random(scene.seed * 7 + 1);
    float[][] encoded = new float[3][width * height];
    double noise = scene.exposure / scene.signalToNoise;
    for (int c = 0; c < 3; c++) {
      double gain = scene.exposure * scene.tint[c];
      for (int i = 0; i < width * height; i++) {
        double value = light[c][i] * gain;
        double share = Math.sqrt(0.3 + 0.7 * Math.min(2, value / scene.exposure));
        encoded[c][i] = encode(value + noise * share * random.nextGaussian());
      }
    }
    heat(encoded, random);
    if (scene.sharpening > 0) {
      sharpen(encoded);
    }
    return quantise(encoded);
  }

  private void heat(float[][] encoded, Random random) {
    for (int k = 0; k < scene.hotPixels; k++) {
      int at = random.nextInt(scene.width * scene.height);
      for (float[] plane : encoded) {
        plane[at] = 1;
      }
    }
  }

  private void sharpen(float[][] encoded) {
    for (float[] plane : encoded) {
      float[] soft = Blur.gaussian(plane, scene.width, scene.height, 1.5);
      for (int i = 0; i < plane.length; i++) {
        plane[i] += (float) scene.sharpening * (plane[i] - soft[i]);
      }
    }
  }

  private BufferedImage quantise(float[][] encoded) {
    BufferedImage image = new BufferedImage(scene.width, scene.height, BufferedImage.TYPE_INT_RGB);
    int[] row = new int[scene.width];
    for (int y = 0; y < scene.height; y++) {
      for (int x = 0; x < scene.width; x++) {
        int at = y * scene.width + x;
        row[x] =
            byteOf(encoded[0][at]) << 16 | byteOf(encoded[1][at]) << 8 | byteOf(encoded[2][at]);
      }
      image.setRGB(0, y, scene.width, 1, row, 0, scene.width);
    }
    return image;
  }

  static float encode(double linear) {
    double place = Math.max(0, Math.min(1, linear)) * (CURVE.length - 1);
    int i = Math.min(CURVE.length - 2, (int) place);
    return (float) (CURVE[i] + (place - i) * (CURVE[i + 1] - CURVE[i]));
  }

  /** The sRGB curve (IEC 61966-2-1). */
  private static float[] curve() {
    float[] curve = new float[65537];
    for (int i = 0; i < curve.length; i++) {
      double v = i / (curve.length - 1.0);
      curve[i] = (float) (v <= 0.0031308 ? 12.92 * v : 1.055 * Math.pow(v, 1 / 2.4) - 0.055);
    }
    return curve;
  }

  private static int byteOf(float value) {
    return Math.max(0, Math.min(255, Math.round(value * 255)));
  }
}
