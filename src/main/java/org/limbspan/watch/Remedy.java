package org.limbspan.watch;

import org.limbspan.sky.Axis;

/**
 * What an answer does to the readings that the alert concerns: those of its setup from the change
 * on, until its end.
 */
public sealed interface Remedy {

  /** Nothing. */
  record None() implements Remedy {}

  /** They are taken back, saying why. */
  record Withdraw() implements Remedy {}

  /** They were measured along this axis, whatever was logged. */
  record Relabel(Axis axis) implements Remedy {}

  /** Nothing is done to readings. */
  Remedy NONE = new None();
}
