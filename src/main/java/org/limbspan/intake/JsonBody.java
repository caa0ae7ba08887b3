package org.limbspan.intake;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.TooLarge;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.exc.JacksonIOException;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.ObjectReader;
import tools.jackson.databind.json.JsonMapper;

/** A JSON body: one object, or a list of objects read one at a time. */
public final class JsonBody implements EntrySource {

  private static final ObjectReader READER =
      JsonMapper.builder()
          .enable(DeserializationFeature.FAIL_ON_READING_DUP_TREE_KEY)
          .disable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build()
          .readerFor(JsonNode.class);

  private final InputStream body;

  public JsonBody(InputStream body) {
    this.body = body;
  }

  /** The one object of a body. */
  public static Entry single(InputStream body) throws IOException {
    List<Entry> entries = new ArrayList<>();
    Shape shape = new JsonBody(body).forEach(entries::add);
    if (shape == Shape.LIST) {
      throw InvalidInput.unreadable("The body is a list; expected one object.", List.of());
    }
    return entries.get(0);
  }

  @Override
  public Shape forEach(Consumer<Entry> action) throws IOException {
    Watched watched = new Watched(body);
    try (JsonParser parser = READER.createParser(watched)) {
      JsonToken first = parser.nextToken();
      if (first == JsonToken.START_OBJECT) {
        Entry only = entry(parser, null);
        requireEnd(parser);
        action.accept(only);
        return Shape.ONE;
      }
      if (first != JsonToken.START_ARRAY) {
        throw notObjects();
      }
      readList(parser, action);
      requireEnd(parser);
      return Shape.LIST;
    } catch (JacksonIOException broken) {
      if (watched.isBroken()) {
        throw broken.getCause();
      }
      throw InvalidInput.unreadable(
          "The body is not JSON in UTF-8: " + broken.getOriginalMessage() + ". Nothing was stored.",
          List.of());
    } catch (JacksonException notJson) {
      throw InvalidInput.unreadable(
          "The body is not JSON: line "
              + notJson.getLocation().getLineNr()
              + ", column "
              + notJson.getLocation().getColumnNr()
              + ", "
              + notJson.getOriginalMessage()
              + ". Nothing was stored.",
          List.of());
    }
  }

  private static void readList(JsonParser parser, Consumer<Entry> action) {
    int place = 0;
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      if (parser.currentToken() != JsonToken.START_OBJECT) {
        throw notObjects();
      }
      place++;
      if (place > MOST_ENTRIES) {
        throw new TooLarge("More than " + MOST_ENTRIES + " entries; send them in parts.");
      }
      action.accept(entry(parser, place));
    }
  }

  private static Entry entry(JsonParser parser, @Nullable Integer place) {
    JsonNode node = READER.readValue(parser);
    Map<String, Object> values = new LinkedHashMap<>();
    node.forEachEntry(
        (name, value) -> {
          if (!value.isNull() && !(value.isString() && value.stringValue().isBlank())) {
            values.put(name, plain(value));
          }
        });
    return new Entry(place, Notation.JSON, values);
  }

  private static Object plain(JsonNode node) {
    if (node.isNumber()) {
      return node.doubleValue();
    }
    if (node.isString()) {
      return node.stringValue();
    }
    if (node.isBoolean()) {
      return node.booleanValue();
    }
    if (node.isArray()) {
      List<Object> list = new ArrayList<>();
      node.forEach(each -> list.add(plain(each)));
      return list;
    }
    return node;
  }

  private static void requireEnd(JsonParser parser) {
    if (parser.nextToken() != null) {
      throw InvalidInput.unreadable(
          "Something follows the end of the JSON value. Nothing was stored.", List.of());
    }
  }

  private static InvalidInput notObjects() {
    return InvalidInput.unreadable(
        "The body is neither an object nor a list of objects. Nothing was stored.", List.of());
  }

  /** Tells a connection that broke from bytes that the parser makes the same exception of. */
  private static final class Watched extends FilterInputStream {

    private boolean broken;

    Watched(InputStream in) {
      super(in);
    }

    boolean isBroken() {
      return broken;
    }

    @Override
    public int read() throws IOException {
      try {
        return in.read();
      } catch (IOException e) {
        broken = true;
        throw e;
      }
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
      try {
        return in.read(buffer, offset, length);
      } catch (IOException e) {
        broken = true;
        throw e;
      }
    }
  }
}
