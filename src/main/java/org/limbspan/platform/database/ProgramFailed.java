package org.limbspan.platform.database;

/** A PostgreSQL program ended with an error. */
final class ProgramFailed extends RuntimeException {

  private static final long serialVersionUID = 1L;

  ProgramFailed(String program, int code, String output) {
    super(program + " ended with code " + code + ": " + output);
  }
}
