package org.limbspan.bench.service;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Fetches one rig's ledger after the other, all the time, and looks into each that is whole. */
final class Exports implements AutoCloseable {

  private final List<String> rigs;
  private final Supplier<Http> service;
  private final Path file;
  private final Random random;
  private final Thread thread;
  private final AtomicInteger whole = new AtomicInteger();
  private final AtomicInteger cutOff = new AtomicInteger();
  private final AtomicInteger unfit = new AtomicInteger();
  private volatile boolean underWay;

  Exports(List<String> rigs, Supplier<Http> service, Path file, long seed) {
    this.rigs = rigs;
    this.service = service;
    this.file = file;
    this.random = new Random(seed);
    this.thread = new Thread(this::run, "exports");
    thread.setDaemon(true);
    thread.start();
  }

  boolean isUnderWay() {
    return underWay;
  }

  /** Ledgers that came whole, were told to be cut off, and came as if whole but were not. */
  String told() {
    return "%d whole, %d told to be cut off or refused, %d unfit"
        .formatted(whole.get(), cutOff.get(), unfit.get());
  }

  int unfit() {
    return unfit.get();
  }

  @Override
  public void close() {
    thread.interrupt();
    try {
      thread.join(10_000);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run() {
    try {
      while (!Thread.currentThread().isInterrupted()) {
        fetch();
        Thread.sleep(random.nextInt(200));
      }
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }

  private void fetch() throws InterruptedException {
    String path = "/api/rigs/" + rigs.get(random.nextInt(rigs.size())) + "/ledger.zip";
    underWay = true;
    try (InputStream body = service.get().stream(path)) {
      try (OutputStream out = Files.newOutputStream(file)) {
        body.transferTo(out);
      }
    } catch (IOException e) {
      cutOff.incrementAndGet();
      return;
    } finally {
      underWay = false;
    }
    if (isFit()) {
      whole.incrementAndGet();
    } else {
      unfit.incrementAndGet();
    }
  }

  /** Whether every file in it has the hash that the description promises. */
  private boolean isFit() {
    Map<String, String> found = new HashMap<>();
    JsonNode description = null;
    try (ZipInputStream zip = new ZipInputStream(Files.newInputStream(file))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (entry.getName().equals("datapackage.json")) {
          description = new JsonMapper().readTree(zip.readAllBytes());
        } else {
          found.put(entry.getName(), sha256(zip));
        }
      }
    } catch (IOException e) {
      return false;
    }
    if (description == null || description.path("resources").isEmpty()) {
      return false;
    }
    for (JsonNode resource : description.path("resources")) {
      String hash = found.get(resource.path("path").asString());
      if (!("sha256:" + hash).equals(resource.path("hash").asString())) {
        return false;
      }
    }
    return true;
  }

  private static String sha256(InputStream in) throws IOException {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      in.transferTo(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
      return HexFormat.of().formatHex(digest.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
