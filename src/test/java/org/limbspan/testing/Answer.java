package org.limbspan.testing;

import tools.jackson.databind.JsonNode;

/** What the service answered: status and body, an empty text if there was none. */
public record Answer(int status, JsonNode body) {

  /** The violation of that field. */
  public JsonNode violation(String field) {
    for (JsonNode violation : body.path("violations")) {
      if (violation.path("field").asString().equals(field)) {
        return violation;
      }
    }
    throw new AssertionError("no violation of " + field + " in " + body);
  }
}
