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

  /** Some hundreds of readings. */
  private static final int LONG_BYTES = 32_768;

  private final EntrySource source;
  private final long bytes;

  private Upload(EntrySource source, long bytes) {
    this.source = source;
    this.bytes = bytes;
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
        return new Upload(
            new CsvBody(request.getInputStream(), charset, requiredColumns),
            request.getContentLengthLong());
      }
      return new Upload(new JsonBody(request.getInputStream()), request.getContentLengthLong());
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

  /** Whether it has some hundreds of entries or more, or does not say how many bytes it has. */
  public boolean isLong() {
    return bytes < 0 || bytes > LONG_BYTES;
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
