package org.limbspan.photo;

import java.util.LinkedHashMap;
import java.util.Map;
import org.limbspan.testing.Answer;
import org.limbspan.testing.RigClient;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.client.RestTestClient;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Sends photographs over HTTP as a browser's form does. */
public final class PhotoClient {

  private static final JsonMapper MAPPER = new JsonMapper();

  private final RestTestClient http;
  private final String slug;

  public PhotoClient(RestTestClient http, RigClient rig) {
    this.http = http;
    this.slug = rig.slug();
  }

  /** One file. */
  public JsonNode send(String query, String name, byte[] file) {
    return send(query, Map.of(name, file)).get(0);
  }

  /** Files by name, in their order. */
  public JsonNode send(String query, Map<String, byte[]> files) {
    Answer answer = post(query, files);
    if (answer.status() != 200) {
      throw new AssertionError("not taken: " + answer);
    }
    return answer.body();
  }

  Answer post(String query, Map<String, byte[]> files) {
    return postTo("/photos" + query, files);
  }

  /** Photographs of a calibration target. */
  Answer postSheets(String query, Map<String, byte[]> files) {
    return postTo("/calibrations/photos" + query, files);
  }

  private Answer postTo(String path, Map<String, byte[]> files) {
    MultiValueMap<String, Object> parts = new LinkedMultiValueMap<>();
    new LinkedHashMap<>(files).forEach((name, file) -> parts.add("photo", part(name, file)));
    var result =
        http.post()
            .uri("/api/rigs/" + slug + path)
            .contentType(MediaType.MULTIPART_FORM_DATA)
            .body(parts)
            .exchange()
            .expectBody()
            .returnResult();
    return new Answer(result.getStatus().value(), MAPPER.readTree(result.getResponseBodyContent()));
  }

  /** A file as a part of a form. */
  public static ByteArrayResource part(String name, byte[] file) {
    return new ByteArrayResource(file) {
      @Override
      public String getFilename() {
        return name;
      }
    };
  }
}
