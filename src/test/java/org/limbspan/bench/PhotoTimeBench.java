package org.limbspan.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
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
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.util.Statistics;

/**
 * Where the time of a 12-megapixel JPEG file goes: median and longest, milliseconds, after ten
 * rounds of warming up, measured by JMH. It is the clock's time, so other work on the machine
 * counts; {@code LimbTimeBench} tells processor time. Arguments: rounds (20), diameter of the disc
 * in pixels (1700).
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 10)
@Measurement(iterations = 20)
@Fork(1)
public class PhotoTimeBench {

  private static final Map<String, String> WORDS =
      Map.of(
          "readHeader", "header",
          "decode", "decode into linear light",
          "measure", "measure the disc");

  /** Of the disc. */
  @Param("1700")
  public double diameterPx = 1700;

  private @Nullable Photograph photograph;

  public static void main(String[] args) throws RunnerException {
    int rounds = args.length > 0 ? Integer.parseInt(args[0]) : 20;
    String diameterPx = args.length > 1 ? args[1] : "1700";
    Options options =
        new OptionsBuilder()
            .include("^" + PhotoTimeBench.class.getName() + "\\.")
            .measurementIterations(rounds)
            .param("diameterPx", diameterPx)
            .build();
    for (RunResult result : new Runner(options).run()) {
      Statistics millis = result.getPrimaryResult().getStatistics();
      System.out.printf(
          Locale.ROOT,
          "%-26s median %7.1f ms, longest %7.1f ms%n",
          WORDS.get(result.getPrimaryResult().getLabel()),
          millis.getPercentile(50),
          millis.getMax());
    }
  }

  @Setup
  public void prepare() throws IOException, UnusableFile {
    Path file = Files.createTempFile("limbspan-timed", ".jpg");
    Files.write(file, photograph(diameterPx));
    PhotoHeader header = PhotoFile.header(file);
    photograph = new Photograph(file, header, PhotoDecoder.decode(file, header));
  }

  @TearDown
  public void remove() throws IOException {
    Files.deleteIfExists(photograph().file());
  }

  @Benchmark
  public Object readHeader() throws IOException, UnusableFile {
    return PhotoFile.header(photograph().file());
  }

  @Benchmark
  public Object decode() throws IOException, UnusableFile {
    return PhotoDecoder.decode(photograph().file(), photograph().header());
  }

  @Benchmark
  public Object measure() {
    return DiscMeasurer.measure(photograph().image(), MeasureOptions.standard());
  }

  private Photograph photograph() {
    return Objects.requireNonNull(photograph);
  }

  private record Photograph(Path file, PhotoHeader header, LinearImage image) {}

  private static byte[] photograph(double diameterPx) {
    MoonScene scene = RenderedMoon.large(diameterPx, 7);
    return RenderedMoon.jpeg(scene, ExifBlock.usual("2026:05:30 21:10:00").offset("+02:00"));
  }
}
