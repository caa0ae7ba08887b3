package org.limbspan.archive;

import java.util.Map;

/**
 * What was taken in.
 *
 * @param rows how many of each part
 * @param originals how many files of photographs
 */
record Taken(String slug, Map<String, Long> rows, long originals) {}
