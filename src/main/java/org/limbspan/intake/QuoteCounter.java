package org.limbspan.intake;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/** Passes characters on and minds whether a quoted field is still open. */
final class QuoteCounter extends FilterReader {

  private boolean insideQuotes;

  QuoteCounter(Reader reader) {
    super(reader);
  }

  /** Whether an odd number of quotation marks has passed. */
  boolean isInsideQuotes() {
    return insideQuotes;
  }

  @Override
  public int read() throws IOException {
    int read = super.read();
    mind(read);
    return read;
  }

  @Override
  public int read(char[] buffer, int offset, int length) throws IOException {
    int count = super.read(buffer, offset, length);
    for (int i = 0; i < count; i++) {
      mind(buffer[offset + i]);
    }
    return count;
  }

  private void mind(int character) {
    if (character == '"') {
      insideQuotes = !insideQuotes;
    }
  }
}
