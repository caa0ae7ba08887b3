package org.limbspan.platform;

import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.json.JsonWriter;
import org.springframework.boot.logging.structured.StructuredLoggingJsonMembersCustomizer;

/**
 * Keeps rig keys and the words of guest links out of a log of JSON objects: a path of a link is a
 * secret, and libraries write paths. The pattern of the plain log in {@code application.yaml} does
 * the same.
 */
final class MaskedWords implements StructuredLoggingJsonMembersCustomizer<Object> {

  private static final Pattern WORD = Pattern.compile("(limbspan-(?:rig|guest)-)[A-Za-z0-9_-]+");

  @Override
  public void customize(JsonWriter.Members<Object> members) {
    members.applyingValueProcessor((path, value) -> masked(value));
  }

  private static @Nullable Object masked(@Nullable Object value) {
    return value instanceof CharSequence text ? WORD.matcher(text).replaceAll("$1...") : value;
  }
}
