package org.limbspan.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.limbspan.limb.DiscMeasurer;
import org.limbspan.limb.LinearImage;
import org.limbspan.limb.MeasureOptions;
import org.limbspan.limb.render.MoonScene;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.photo.file.PhotoDecoder;
import org.limbspan.photo.file.PhotoFile;
import org.limbspan.photo.file.PhotoHeader;
import org.limbspan.photo.file.UnusableFile;

/**
 * Where the time of a 12-megapixel JPEG file goes, in processor time of the one thread that works
 * on it, so that other work on the machine counts little: median and longest, milliseconds, after
 * ten rounds of warming up. Arguments: rounds (20), diameter of the disc in pixels (1700).
 */
public final class PhotoTimeBench {

  private static final int WARMING_UP = 10;

  private PhotoTimeBench() {}

  public static void main(String[] args) throws IOException, UnusableFile {
    int rounds = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    double diameterPx = args.length > 1 ? Double.parseDouble(args[1]) : 1700;
    Path file = Files.createTempFile("limbspan-timed", ".jpg");
    try {
      Files.write(file, photograph(diameterPx));
      double[][] millis = new double[3][rounds];
      for (int round = -WARMING_UP; round < rounds; round++) {
        long start = nanos();
        PhotoHeader header = PhotoFile.header(file);
        long read = nanos();
        LinearImage image = PhotoDecoder.decode(file, header);
        long decoded = nanos();
        DiscMeasurer.measure(image, MeasureOptions.standard());
        long measured = nanos();
        if (round >= 0) {
          millis[0][round] = (read - start) / 1e6;
          millis[1][round] = (decoded - read) / 1e6;
          millis[2][round] = (measured - decoded) / 1e6;
        }
      }
      print("header", millis[0]);
      print("decode into linear light", millis[1]);
      print("measure the disc", millis[2]);
    } finally {
      Files.deleteIfExists(file);
    }
  }

  private static void print(String what, double[] millis) {
    double[] sorted = millis.clone();
    Arrays.sort(sorted);
    System.out.printf(
        "%-26s median %7.1f ms, longest %7.1f ms%n",
        what, sorted[sorted.length / 2], sorted[sorted.length - 1]);
  }

  private static byte[] photograph(double diameterPx) {
    MoonScene scene = RenderedMoon.scene(diameterPx, 7);
    scene.width = 4240;
    scene.height = 2832;
    scene.centreX = 2111.3;
    scene.centreY = 1402.2;
    scene.fwhmPx = 4;
    return RenderedMoon.jpeg(scene, ExifBlock.usual("2026:05:30 21:10:00").offset("+02:00"));
  }

  private static long nanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }
}
