package org.limbspan.platform;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JacksonException;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.PropertyBindingException;

/** Says in a client's words why a JSON body could not be read. */
final class UnreadableJson {

  private UnreadableJson() {}

  static Problem explain(@Nullable Throwable cause) {
    if (cause instanceof PropertyBindingException unknown) {
      return atField(unknown, null, "one of the fields " + names(unknown));
    }
    if (cause instanceof InvalidFormatException format) {
      return atField(format, format.getValue(), ExpectedValue.of(format.getTargetType()));
    }
    if (cause instanceof MismatchedInputException mismatch && !mismatch.getPath().isEmpty()) {
      return atField(mismatch, null, ExpectedValue.of(mismatch.getTargetType()));
    }
    if (cause instanceof JacksonException json) {
      return InvalidInput.unreadable(
          "The body is not the JSON expected" + place(json) + ".", List.of());
    }
    return InvalidInput.unreadable("The body is missing or cannot be read.", List.of());
  }

  /** A place in a list at the top counts as the line, from 1; the rest of the path is the field. */
  private static Problem atField(JacksonException thrown, @Nullable Object value, String expected) {
    StringBuilder field = new StringBuilder();
    Integer line = null;
    for (JacksonException.Reference step : thrown.getPath()) {
      if (step.getPropertyName() != null) {
        field.append(field.isEmpty() ? "" : ".").append(step.getPropertyName());
      } else if (field.isEmpty()) {
        line = step.getIndex() + 1;
      } else {
        field.append('[').append(step.getIndex()).append(']');
      }
    }
    Violation violation =
        new Violation(field.isEmpty() ? "body" : field.toString(), value, expected);
    return InvalidInput.inBody(List.of(line == null ? violation : violation.atLine(line)));
  }

  private static String names(PropertyBindingException unknown) {
    List<String> names = new ArrayList<>();
    if (unknown.getKnownPropertyIds() != null) {
      unknown.getKnownPropertyIds().forEach(name -> names.add(String.valueOf(name)));
    }
    return String.join(", ", names);
  }

  private static String place(JacksonException json) {
    TokenStreamLocation location = json.getLocation();
    return location == null || location.getLineNr() < 1
        ? ""
        : " at line " + location.getLineNr() + ", column " + location.getColumnNr();
  }
}
