package org.limbspan.testing.fuzz;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Makes bad inputs of good ones: the same seed makes the same. */
public final class Mutator {

  private static final int[] BIG = {
    0x7fffffff, 0xffffffff, 0x80000000, 0x00ffffff, 65_536, 65_535, 256, 0
  };

  /** What breaks parsers, whatever they parse. */
  private static final List<String> USUAL =
      List.of(
          "",
          "\u0000",
          "\r",
          "\n",
          "\"",
          "'",
          ",",
          ";",
          "\t",
          "-",
          "+",
          ".",
          "e",
          "0",
          "1e308",
          "1e999",
          "-0",
          "NaN",
          "Infinity",
          "99999999999999999999",
          "0x1p3",
          "\u0661",
          "\uff11",
          "\u2212",
          "\u2028",
          "\ufeff",
          "\ud83c\udf17",
          "../",
          "%00",
          "{",
          "}",
          "[",
          "]",
          "null",
          "true",
          "+02:00",
          "Z",
          "T24:00:00",
          "-02-30",
          "+999999999-12-31",
          "23:59:60");

  private static final int LONGEST = 1 << 16;

  private final Random random;

  public Mutator(long seed) {
    random = new Random(seed);
  }

  /** An input for a parser; one in fifty is nothing but noise. */
  public byte[] input(ParserTarget target) {
    if (random.nextInt(50) == 0) {
      byte[] noise = new byte[random.nextInt(300)];
      random.nextBytes(noise);
      return noise;
    }
    byte[] bytes = target.seeds().get(random.nextInt(target.seeds().size())).clone();
    int changes = 1 + random.nextInt(5);
    for (int i = 0; i < changes; i++) {
      bytes = changed(bytes, target);
    }
    return bytes.length <= LONGEST ? bytes : Arrays.copyOf(bytes, LONGEST);
  }

  private byte[] changed(byte[] bytes, ParserTarget target) {
    return switch (random.nextInt(9)) {
      case 0 -> Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
      case 1 -> flipped(bytes);
      case 2 -> blownUp(bytes);
      case 3 -> spliced(bytes, target.seeds().get(random.nextInt(target.seeds().size())));
      case 4 -> repeated(bytes);
      case 5 -> without(bytes);
      case 6 -> with(bytes, word(target.words()));
      case 7 -> with(bytes, word(USUAL));
      default -> overwritten(bytes);
    };
  }

  private byte[] word(List<String> words) {
    String word = words.isEmpty() ? "" : words.get(random.nextInt(words.size()));
    return word.getBytes(StandardCharsets.UTF_8);
  }

  private byte[] flipped(byte[] bytes) {
    if (bytes.length > 0) {
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    }
    return bytes;
  }

  private byte[] blownUp(byte[] bytes) {
    if (bytes.length > 4) {
      ByteOrder order = random.nextBoolean() ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
      ByteBuffer.wrap(bytes)
          .order(order)
          .putInt(random.nextInt(bytes.length - 4), BIG[random.nextInt(BIG.length)]);
    }
    return bytes;
  }

  /** The beginning of one and the end of another. */
  private byte[] spliced(byte[] bytes, byte[] other) {
    int head = random.nextInt(bytes.length + 1);
    int tail = random.nextInt(other.length + 1);
    return ByteBuffer.allocate(head + other.length - tail)
        .put(bytes, 0, head)
        .put(other, tail, other.length - tail)
        .array();
  }

  private byte[] repeated(byte[] bytes) {
    if (bytes.length == 0) {
      return bytes;
    }
    int from = random.nextInt(bytes.length);
    int length = 1 + random.nextInt(Math.min(bytes.length - from, 64));
    int times = 1 + random.nextInt(random.nextInt(20) == 0 ? 400 : 4);
    ByteBuffer longer = ByteBuffer.allocate(bytes.length + length * times).put(bytes, 0, from);
    for (int i = 0; i < times; i++) {
      longer.put(bytes, from, length);
    }
    return longer.put(bytes, from, bytes.length - from).array();
  }

  private byte[] without(byte[] bytes) {
    if (bytes.length == 0) {
      return bytes;
    }
    int from = random.nextInt(bytes.length);
    int length = 1 + random.nextInt(bytes.length - from);
    return ByteBuffer.allocate(bytes.length - length)
        .put(bytes, 0, from)
        .put(bytes, from + length, bytes.length - from - length)
        .array();
  }

  private byte[] with(byte[] bytes, byte[] word) {
    int at = random.nextInt(bytes.length + 1);
    return ByteBuffer.allocate(bytes.length + word.length)
        .put(bytes, 0, at)
        .put(word)
        .put(bytes, at, bytes.length - at)
        .array();
  }

  private byte[] overwritten(byte[] bytes) {
    int length = Math.min(bytes.length, 1 + random.nextInt(16));
    int at = random.nextInt(bytes.length - length + 1);
    for (int i = 0; i < length; i++) {
      bytes[at + i] = (byte) random.nextInt(256);
    }
    return bytes;
  }
}
