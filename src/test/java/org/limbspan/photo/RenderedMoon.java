package org.limbspan.photo;

import java.awt.image.BufferedImage;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonRenderer;
import org.limbspan.limb.render.MoonScene;

/** Rendered photographs of an invented camera, with their truth. */
public final class RenderedMoon {

  private static final int QUALITY = 95;

  private RenderedMoon() {}

  /** A full Moon without refraction, a horizontal diameter of that many pixels. */
  public static MoonScene scene(double diameterPx, long seed) {
    MoonScene scene = new MoonScene();
    scene.width = 600;
    scene.height = 520;
    scene.centreX = 301.3;
    scene.centreY = 258.7;
    scene.radiusPx = diameterPx / 2;
    scene.fwhmPx = 2.2;
    scene.signalToNoise = 80;
    scene.seed = seed;
    return scene;
  }

  /** The same on 12 megapixels, with an edge 4 px wide. */
  public static MoonScene large(double diameterPx, long seed) {
    MoonScene scene = scene(diameterPx, seed);
    scene.width = 4240;
    scene.height = 2832;
    scene.centreX = 2111.3;
    scene.centreY = 1402.2;
    scene.fwhmPx = 4;
    return scene;
  }

  public static BufferedImage picture(MoonScene scene) {
    return new MoonRenderer(scene).render();
  }

  /** A file that tells nothing of its camera. */
  public static byte[] plainJpeg(MoonScene scene) {
    return JpegFile.bytes(picture(scene), QUALITY);
  }

  /** The camera's file. */
  public static byte[] jpeg(MoonScene scene, ExifBlock exif) {
    return PictureBytes.jpeg(plainJpeg(scene), exif);
  }
}
