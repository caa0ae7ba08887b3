package org.limbspan.archive;

import java.util.Map;

/**
 * What was taken in.
 *
 * @param rows how many of each part
 */
record Taken(String slug, Map<String, Long> rows) {}
