package org.limbspan.photo;

/** Is told of each file as soon as it is measured or refused. */
public interface PhotoProgress {

  /** Tells nobody. */
  PhotoProgress SILENT = (place, answer) -> {};

  /** The file at a place, counted from 0 in the order in which they were sent. */
  void told(int place, PhotoAnswer answer);
}
