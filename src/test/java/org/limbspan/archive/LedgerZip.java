package org.limbspan.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.limbspan.platform.Sha256;
import org.springframework.test.web.servlet.client.RestTestClient;

/** A ledger's zip file in memory, to be looked into and tampered with. */
final class LedgerZip {

  private LedgerZip() {}

  static byte[] of(RestTestClient client, String slug, String query) {
    return client
        .get()
        .uri("/api/rigs/" + slug + "/ledger.zip" + query)
        .exchange()
        .expectStatus()
        .isOk()
        .expectBody()
        .returnResult()
        .getResponseBodyContent();
  }

  static Map<String, byte[]> files(byte[] ledger) throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(ledger))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        files.put(entry.getName(), zip.readAllBytes());
      }
    }
    return files;
  }

  static Map<String, String> texts(byte[] ledger) throws IOException {
    Map<String, String> texts = new LinkedHashMap<>();
    files(ledger)
        .forEach((name, file) -> texts.put(name, new String(file, StandardCharsets.UTF_8)));
    return texts;
  }

  static byte[] file(Map<String, byte[]> files, String name) {
    return Objects.requireNonNull(files.get(name), name);
  }

  /** With one file changed, and its hash in the description if {@code described}. */
  static byte[] changed(byte[] ledger, String name, UnaryOperator<String> change, boolean described)
      throws IOException {
    Map<String, byte[]> files = files(ledger);
    byte[] before = file(files, name);
    byte[] after =
        change.apply(new String(before, StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8);
    assertThat(after).isNotEqualTo(before);
    files.put(name, after);
    if (described) {
      files.computeIfPresent(
          "datapackage.json",
          (file, json) ->
              new String(json, StandardCharsets.UTF_8)
                  .replace(sha256(before), sha256(after))
                  .getBytes(StandardCharsets.UTF_8));
    }
    return zip(files);
  }

  static byte[] zip(Map<String, byte[]> files) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        zip.putNextEntry(new ZipEntry(file.getKey()));
        zip.write(file.getValue());
      }
    }
    return out.toByteArray();
  }

  static String sha256(byte[] bytes) {
    return HexFormat.of().formatHex(Sha256.of(bytes));
  }
}
