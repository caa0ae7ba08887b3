package org.limbspan.bench.service;

import java.util.Set;

/**
 * One thing that a client sends, again and again until it is answered.
 *
 * @param rig short name of the rig
 * @param readings instants of the readings in it, as written
 */
record Deed(String rig, String path, String type, String body, Set<String> readings) {

  /** Whether an answer says that it is held now: taken, or there already. */
  static boolean isDone(int status) {
    return status == 200 || status == 201 || status == 409;
  }

  /** Whether it makes sense to send it again. */
  static boolean isWorthAnother(int status) {
    return status == Http.NO_ANSWER || status == 429 || status >= 500;
  }
}
