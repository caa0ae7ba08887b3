package org.limbspan.photo;

import java.nio.file.Path;

/**
 * A file that somebody sent.
 *
 * @param name as the sender calls it
 */
public record IncomingPhoto(Path file, String name) {

  private static final int LONGEST_NAME = 200;

  public IncomingPhoto {
    name = plain(name);
  }

  /** Without the folders that some browsers send along, and without control characters. */
  static String plain(String name) {
    String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    String clean = last.replaceAll("[\\p{Cntrl}\\p{Cs}\\p{Co}]", "").strip();
    if (clean.isEmpty()) {
      return "unnamed";
    }
    return clean.length() <= LONGEST_NAME ? clean : clean.substring(clean.length() - LONGEST_NAME);
  }
}
