package org.limbspan.platform;

/** Tells pages who looks at them. */
public interface Doorkeeper {

  /** Who sent the request of this thread. */
  Visitor visitor();
}
