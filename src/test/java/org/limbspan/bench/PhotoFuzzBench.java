package org.limbspan.bench;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.limbspan.limb.DiscMeasurer;
import org.limbspan.limb.MeasureOptions;
import org.limbspan.limb.Measurement;
import org.limbspan.limb.render.JpegFile;
import org.limbspan.limb.render.MoonScene;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PictureBytes;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.photo.file.PhotoDecoder;
import org.limbspan.photo.file.PhotoFile;
import org.limbspan.photo.file.PhotoHeader;
import org.limbspan.photo.file.UnusableFile;

/**
 * Mutated picture files through decoder and measurement: bytes flipped, overwritten, cut off,
 * spliced, numbers blown up. Prints what became of them, the slowest, and the most heap; run it
 * with {@code -Xmx512m}. Arguments: how many files (10000), seed (1).
 */
public final class PhotoFuzzBench {

  private static final int[] BIG = {0x7fffffff, 0xffffffff, 0x80000000, 0x00ffffff, 65535, 20_000};

  private final Random random;
  private final List<byte[]> originals = originals();
  private final Map<String, Integer> outcomes = new TreeMap<>();
  private long slowestNanos;
  private int unexpected;

  private PhotoFuzzBench(long seed) {
    random = new Random(seed);
  }

  public static void main(String[] args) throws IOException {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 10_000;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    new PhotoFuzzBench(seed).run(count);
  }

  private void run(int count) throws IOException {
    Path file = Files.createTempFile("limbspan-mutated", ".bin");
    long start = System.nanoTime();
    try {
      for (int i = 0; i < count; i++) {
        byte[] mutated = mutated();
        Files.write(file, mutated);
        long begun = System.nanoTime();
        String outcome = outcome(file);
        note(System.nanoTime() - begun, outcome, mutated.length);
        outcomes.merge(outcome, 1, Integer::sum);
      }
    } finally {
      Files.deleteIfExists(file);
    }
    outcomes.forEach((outcome, n) -> System.out.printf("%6d  %s%n", n, outcome));
    System.out.printf(
        "%d files in %.0f s, slowest %.2f s, unexpected %d, peak of the heap %d MB of %d MB%n",
        count,
        (System.nanoTime() - start) / 1e9,
        slowestNanos / 1e9,
        unexpected,
        peakHeapBytes() >> 20,
        Runtime.getRuntime().maxMemory() >> 20);
  }

  private void note(long nanos, String outcome, int bytes) {
    if (nanos > slowestNanos) {
      slowestNanos = nanos;
      System.out.printf("%.2f s for %d bytes, %s%n", nanos / 1e9, bytes, outcome);
    }
  }

  private String outcome(Path file) {
    try {
      PhotoHeader header = PhotoFile.header(file);
      Measurement result =
          DiscMeasurer.measure(PhotoDecoder.decode(file, header), MeasureOptions.standard());
      return result instanceof Measurement.Refused refused
          ? "refused by the limb: " + refused.reason()
          : "measured";
    } catch (UnusableFile unusable) {
      return "refused as a file: " + unusable.problem();
    } catch (IOException | RuntimeException | Error thrown) {
      unexpected++;
      thrown.printStackTrace(System.out);
      return "UNEXPECTED " + thrown.getClass().getName();
    }
  }

  private byte[] mutated() {
    byte[] bytes = originals.get(random.nextInt(originals.size())).clone();
    int changes = 1 + random.nextInt(4);
    for (int i = 0; i < changes; i++) {
      bytes = mutated(bytes);
    }
    return bytes;
  }

  private byte[] mutated(byte[] bytes) {
    int headEnd = Math.min(bytes.length, 400);
    return switch (random.nextInt(7)) {
      case 0 -> Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
      case 1 -> flipped(bytes, bytes.length);
      case 2, 3 -> flipped(bytes, headEnd);
      case 4 -> blownUp(bytes, random.nextBoolean() ? headEnd : bytes.length);
      case 5 -> spliced(bytes);
      default -> overwritten(bytes);
    };
  }

  private byte[] flipped(byte[] bytes, int end) {
    if (end > 0) {
      bytes[random.nextInt(end)] ^= (byte) (1 << random.nextInt(8));
    }
    return bytes;
  }

  private byte[] blownUp(byte[] bytes, int end) {
    if (end > 4) {
      ByteBuffer.wrap(bytes).putInt(random.nextInt(end - 4), BIG[random.nextInt(BIG.length)]);
    }
    return bytes;
  }

  private byte[] overwritten(byte[] bytes) {
    int length = Math.min(bytes.length, 1 + random.nextInt(64));
    int at = random.nextInt(bytes.length - length + 1);
    for (int i = 0; i < length; i++) {
      bytes[at + i] = (byte) random.nextInt(256);
    }
    return bytes;
  }

  /** The beginning of one file and the end of another. */
  private byte[] spliced(byte[] bytes) {
    byte[] other = originals.get(random.nextInt(originals.size()));
    int head = random.nextInt(bytes.length + 1);
    int tail = random.nextInt(other.length + 1);
    ByteBuffer both = ByteBuffer.allocate(head + other.length - tail);
    return both.put(bytes, 0, head).put(other, tail, other.length - tail).array();
  }

  private static List<byte[]> originals() {
    MoonScene scene = RenderedMoon.scene(150, 3);
    scene.width = 220;
    scene.height = 200;
    scene.centreX = 110;
    scene.centreY = 100;
    BufferedImage picture = RenderedMoon.picture(scene);
    BufferedImage grey = new BufferedImage(220, 200, BufferedImage.TYPE_USHORT_GRAY);
    grey.createGraphics().drawImage(picture, 0, 0, null);
    ExifBlock exif = ExifBlock.usual("2026:05:29 21:10:00").offset("+02:00").orientation(6);
    List<byte[]> originals = new ArrayList<>();
    originals.add(PictureBytes.jpeg(JpegFile.bytes(picture, 90), exif));
    originals.add(PictureBytes.jpeg(PictureBytes.progressiveJpeg(picture), exif));
    originals.add(PictureBytes.png(PictureBytes.png(picture), exif));
    originals.add(PictureBytes.png(grey));
    for (String compression : List.of("none", "LZW", "ZLib", "PackBits")) {
      originals.add(PictureBytes.tiff(picture, compression));
      originals.add(PictureBytes.tiff(grey, compression));
    }
    return originals;
  }

  private static long peakHeapBytes() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(pool -> pool.getType() == MemoryType.HEAP)
        .map(MemoryPoolMXBean::getPeakUsage)
        .mapToLong(usage -> usage.getUsed())
        .sum();
  }
}
