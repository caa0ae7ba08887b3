package org.limbspan.intake;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import org.limbspan.intake.EntrySource.Shape;
import org.limbspan.platform.InvalidInput;
import org.springframework.http.MediaType;

/** The body of a request, by its media type JSON or {@code text/csv}. */
public final class Upload {

  /** The media type of CSV files (RFC 4180). */
  public static final String TEXT_CSV = "text/csv";

  private final EntrySource source;

  private Upload(EntrySource source) {
    this.source = source;
  }

  /**
   * The body of {@code request}.
   *
   * @param requiredColumns a CSV header must have one of each set, by inner name
   */
  public static Upload of(HttpServletRequest request, List<Set<String>> requiredColumns) {
    MediaType type = MediaType.parseMediaType(String.valueOf(request.getContentType()));
    try {
      if (MediaType.parseMediaType(TEXT_CSV).isCompatibleWith(type)) {
        Charset charset = type.getCharset() == null ? StandardCharsets.UTF_8 : type.getCharset();
        return new Upload(new CsvBody(request.getInputStream(), charset, requiredColumns));
      }
      return new Upload(new JsonBody(request.getInputStream()));
    } catch (IOException e) {
      throw brokenOff();
    }
  }

  /** The one JSON object of a request. */
  public static Entry single(HttpServletRequest request) {
    try {
      return JsonBody.single(request.getInputStream());
    } catch (IOException e) {
      throw brokenOff();
    }
  }

  /**
   * Gives every entry in order.
   *
   * @throws org.limbspan.platform.Problem if the body cannot be read to its end
   */
  public Shape forEach(Consumer<Entry> action) {
    try {
      return source.forEach(action);
    } catch (IOException e) {
      throw brokenOff();
    }
  }

  private static InvalidInput brokenOff() {
    return InvalidInput.unreadable(
        "The upload broke off before its end. Nothing was stored; send it again.", List.of());
  }
}
