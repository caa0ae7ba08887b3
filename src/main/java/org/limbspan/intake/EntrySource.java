package org.limbspan.intake;

import java.io.IOException;
import java.util.function.Consumer;

/** A body that gives its entries one after the other. */
public interface EntrySource {

  /** How many entries one request may hold. */
  int MOST_ENTRIES = 200_000;

  /**
   * Gives every entry in order.
   *
   * @return how many values stand at the top: one object, or a list
   * @throws org.limbspan.platform.Problem if the body cannot be read to its end
   * @throws IOException if the connection broke
   */
  Shape forEach(Consumer<Entry> action) throws IOException;

  /** Whether the client sent one thing or a list of things. */
  enum Shape {
    ONE,
    LIST
  }
}
