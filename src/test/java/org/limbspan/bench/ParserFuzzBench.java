package org.limbspan.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.limbspan.archive.ArchiveTargets;
import org.limbspan.dashboard.TypedTargets;
import org.limbspan.notice.RecipientTargets;
import org.limbspan.photo.file.HeaderTargets;
import org.limbspan.reading.ReadingTargets;
import org.limbspan.rig.RigTargets;
import org.limbspan.sky.SkyFixture;
import org.limbspan.testing.fuzz.Mutator;
import org.limbspan.testing.fuzz.ParserTarget;
import org.springframework.util.FileSystemUtils;

/**
 * Bad inputs through every parser that reads what somebody else wrote. An exception that is not
 * declared, or an input that takes more than two seconds of the processor or two minutes, ends with
 * status 1; run it with {@code -Xmx256m}, so that memory without bounds ends it too. Arguments: how
 * many (1000000), seed (1).
 */
public final class ParserFuzzBench {

  private static final long LONGEST_CPU_NANOS = 2_000_000_000L;
  private static final long LONGEST_NANOS = 120_000_000_000L;
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private final Map<String, long[]> counts = new TreeMap<>();
  private final AtomicLong begun = new AtomicLong(Long.MAX_VALUE);
  private final AtomicLong begunCpu = new AtomicLong();
  private final AtomicReference<String> trying = new AtomicReference<>("");
  private long slowestNanos;
  private String slowest = "";
  private int faults;

  public static void main(String[] args) throws IOException {
    int count = args.length > 0 ? Integer.parseInt(args[0]) : 1_000_000;
    long seed = args.length > 1 ? Long.parseLong(args[1]) : 1;
    System.exit(new ParserFuzzBench().run(count, seed) ? 0 : 1);
  }

  /** Every parser there is. */
  public static List<ParserTarget> targets(Path folder) {
    List<ParserTarget> all = new ArrayList<>();
    all.addAll(ReadingTargets.all(SkyFixture.sky()));
    all.addAll(RigTargets.all());
    all.addAll(TypedTargets.all());
    all.addAll(RecipientTargets.all());
    all.addAll(HeaderTargets.all(folder));
    all.addAll(ArchiveTargets.all(folder));
    return all;
  }

  private boolean run(int count, long seed) throws IOException {
    Path folder = Files.createTempDirectory("limbspan-fuzz");
    long start = System.nanoTime();
    watch();
    try {
      List<ParserTarget> byShare = new ArrayList<>();
      for (ParserTarget target : targets(folder)) {
        for (int i = 0; i < target.share(); i++) {
          byShare.add(target);
        }
      }
      Mutator mutator = new Mutator(seed);
      Random random = new Random(seed);
      for (int i = 0; i < count; i++) {
        ParserTarget target = byShare.get(random.nextInt(byShare.size()));
        attempt(target, mutator.input(target));
      }
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
    counts.forEach(
        (name, its) -> System.out.printf("%8d taken %8d refused  %s%n", its[0], its[1], name));
    System.out.printf(
        "%d inputs in %.0f s, faults %d, slowest %.3f s (%s), peak of the heap %d MB of %d MB%n",
        count,
        (System.nanoTime() - start) / 1e9,
        faults,
        slowestNanos / 1e9,
        slowest,
        peakHeapBytes() >> 20,
        Runtime.getRuntime().maxMemory() >> 20);
    return faults == 0;
  }

  private void attempt(ParserTarget target, byte[] input) {
    long[] its = counts.computeIfAbsent(target.name(), name -> new long[2]);
    trying.set(target.name());
    long now = THREADS.getCurrentThreadCpuTime();
    begunCpu.set(now);
    begun.set(System.nanoTime());
    try {
      its[target.takes(input) ? 0 : 1]++;
    } catch (Exception | StackOverflowError fault) {
      faults++;
      if (faults <= 20) {
        System.out.println(target.name() + ": " + HexFormat.of().formatHex(input));
        fault.printStackTrace(System.out);
      }
    }
    begun.set(Long.MAX_VALUE);
    long nanos = THREADS.getCurrentThreadCpuTime() - now;
    if (nanos > slowestNanos) {
      slowestNanos = nanos;
      slowest = target.name() + ", " + input.length + " bytes";
    }
  }

  /** Ends everything if one input takes too long. */
  private void watch() {
    long worker = Thread.currentThread().getId();
    Thread watcher =
        new Thread(
            () -> {
              while (true) {
                long since = begun.get();
                if (since != Long.MAX_VALUE
                    && (System.nanoTime() - since > LONGEST_NANOS
                        || THREADS.getThreadCpuTime(worker) - begunCpu.get() > LONGEST_CPU_NANOS)) {
                  System.out.println("too long in " + trying.get());
                  Runtime.getRuntime().halt(1);
                }
                try {
                  Thread.sleep(100);
                } catch (InterruptedException e) {
                  return;
                }
              }
            });
    watcher.setDaemon(true);
    watcher.start();
  }

  private static long peakHeapBytes() {
    return ManagementFactory.getMemoryPoolMXBeans().stream()
        .filter(pool -> pool.getType() == MemoryType.HEAP)
        .map(MemoryPoolMXBean::getPeakUsage)
        .mapToLong(usage -> usage.getUsed())
        .sum();
  }
}
