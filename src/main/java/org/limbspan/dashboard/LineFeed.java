package org.limbspan.dashboard;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.databind.json.JsonMapper;

/**
 * Tells a browser one JSON object a line, each at once. A browser that has gone away must not stop
 * what it began: from then on nobody is told.
 */
final class LineFeed {

  private static final Logger LOG = LoggerFactory.getLogger(LineFeed.class);

  private final JsonMapper mapper;
  private final OutputStream output;
  private boolean gone;

  LineFeed(JsonMapper mapper, OutputStream output) {
    this.mapper = mapper;
    this.output = output;
  }

  void tell(String name, Object value) {
    if (gone) {
      return;
    }
    try {
      String line = mapper.writeValueAsString(Map.of(name, value)) + "\n";
      output.write(line.getBytes(StandardCharsets.UTF_8));
      output.flush();
    } catch (IOException e) {
      LOG.debug("the browser went away", e);
      gone = true;
    }
  }
}
