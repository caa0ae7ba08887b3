package org.limbspan.cycle;

/** What becomes of the part of the noise that the readings of one night share. */
enum NightPart {
  /** A random level of each night, its spread estimated. */
  RANDOM,
  /** No matter: the night is the group of the free intercept, so that only differences count. */
  ABSORBED
}
