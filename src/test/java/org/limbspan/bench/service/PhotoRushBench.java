package org.limbspan.bench.service;

import static org.limbspan.bench.service.Bench.byClients;
import static org.limbspan.bench.service.Bench.require;
import static org.limbspan.bench.service.Bench.secondsSince;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.limbspan.photo.ExifBlock;
import org.limbspan.photo.PictureBytes;
import org.limbspan.photo.RenderedMoon;
import org.limbspan.sky.Site;
import org.springframework.util.FileSystemUtils;
import tools.jackson.databind.JsonNode;

/**
 * Photographs of 12 megapixels at once into a small service: first each by a client of its own, all
 * beside each other, then as many in one request. Prints what became of them, the time and the
 * memory, and whether the service is well afterwards. A client that is told to send again does so
 * after two seconds. Arguments: jar (target/limbspan.jar), heap (512m), photographs (20).
 */
public final class PhotoRushBench {

  private static final DateTimeFormatter EXIF =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);

  private static final String BOUNDARY = "between-photographs";

  /** An invented rig. */
  private static final Site SITE = new Site(40, 0, 100);

  /** Of a night with a nearly full Moon. */
  private static final LocalDateTime FIRST = LocalDateTime.of(2026, 10, 25, 22, 0);

  /** Too far apart for one bracket. */
  private static final int MINUTES_APART = 20;

  private final Path folder;
  private final int count;

  private PhotoRushBench(Path folder, int count) {
    this.folder = folder;
    this.count = count;
  }

  public static void main(String[] args) throws Exception {
    Path jar = Path.of(args.length > 0 ? args[0] : "target/limbspan.jar");
    String heap = args.length > 1 ? args[1] : "512m";
    int count = args.length > 2 ? Integer.parseInt(args[2]) : 20;
    Path folder = Files.createTempDirectory("limbspan-rush");
    try {
      new PhotoRushBench(folder, count).run(jar, heap);
    } finally {
      FileSystemUtils.deleteRecursively(folder);
    }
  }

  private void run(Path jar, String heap) throws Exception {
    List<byte[]> photographs = photographs();
    try (ServiceProcess service =
        ServiceProcess.of(
            jar, folder.resolve("home"), List.of("-Xmx" + heap), List.of(), Map.of())) {
      service.start();
      for (String slug : List.of("rush", "queue")) {
        String rig =
            """
            {"slug": "%s", "name": "Invented rig", "latitudeDeg": %.1f, "longitudeDeg": %.1f,
             "elevationM": %.0f, "timeZone": "UTC"}"""
                .formatted(slug, SITE.latitudeDeg(), SITE.longitudeDeg(), SITE.elevationM());
        require(service.http().post("/api/rigs", "application/json", rig), 201);
      }
      System.out.println("before: " + Memory.of(service));
      beside(service, photographs);
      together(service, photographs);
      System.out.println("health " + service.http().status("/actuator/health"));
    }
  }

  private void beside(ServiceProcess service, List<byte[]> photographs) throws Exception {
    List<Path> bodies = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      bodies.add(body("one-" + i, photographs.subList(i, i + 1)));
    }
    Map<String, Integer> outcomes = new TreeMap<>();
    long began = System.nanoTime();
    byClients(
        count,
        count,
        index -> {
          send(service, "rush", bodies.get(index), outcomes);
          return 1;
        });
    tell(count + " clients, one each", outcomes, began, service);
  }

  private void together(ServiceProcess service, List<byte[]> photographs) throws Exception {
    Path body = body("all", photographs);
    Map<String, Integer> outcomes = new TreeMap<>();
    long began = System.nanoTime();
    send(service, "queue", body, outcomes);
    tell("one request with " + count, outcomes, began, service);
  }

  private static void tell(
      String what, Map<String, Integer> outcomes, long began, ServiceProcess service)
      throws IOException {
    System.out.printf(
        "%s: %s in %.1f s; %s%n", what, outcomes, secondsSince(began), Memory.of(service));
  }

  private static void send(
      ServiceProcess service, String slug, Path body, Map<String, Integer> outcomes)
      throws IOException, InterruptedException {
    String path = "/api/rigs/" + slug + "/photos";
    String type = "multipart/form-data; boundary=" + BOUNDARY;
    Http.Reply reply = service.http().postFile(path, type, body);
    while (reply.status() == 503) {
      synchronized (outcomes) {
        outcomes.merge("told to send again", 1, Integer::sum);
      }
      Thread.sleep(2000);
      reply = service.http().postFile(path, type, body);
    }
    synchronized (outcomes) {
      if (reply.status() != 200) {
        outcomes.merge(reply.status() + " " + reply.problem(), 1, Integer::sum);
        return;
      }
      for (JsonNode answer : reply.json()) {
        outcomes.merge(
            (answer.path("outcome").asString() + " " + answer.path("refusal").asString("")).strip(),
            1,
            Integer::sum);
      }
    }
  }

  private Path body(String name, List<byte[]> photographs) throws IOException {
    Path file = folder.resolve(name + ".multipart");
    try (OutputStream out = Files.newOutputStream(file)) {
      for (int i = 0; i < photographs.size(); i++) {
        String head =
            "--%s\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"%s-%d.jpg\"\r\nContent-Type: image/jpeg\r\n\r\n"
                .formatted(BOUNDARY, name, i);
        out.write(head.getBytes(StandardCharsets.US_ASCII));
        out.write(photographs.get(i));
        out.write("\r\n".getBytes(StandardCharsets.US_ASCII));
      }
      out.write(("--" + BOUNDARY + "--\r\n").getBytes(StandardCharsets.US_ASCII));
    }
    return file;
  }

  /** One picture with as many times; the Moon's size hardly changes in such a night. */
  private List<byte[]> photographs() {
    byte[] picture = RenderedMoon.plainJpeg(RenderedMoon.large(1700, 7));
    return IntStream.range(0, count)
        .mapToObj(
            i ->
                PictureBytes.jpeg(
                    picture,
                    ExifBlock.usual(EXIF.format(FIRST.plusMinutes((long) i * MINUTES_APART)))
                        .offset("+00:00")))
        .toList();
  }
}
