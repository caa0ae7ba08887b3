package org.limbspan.platform;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * One table of a rig's ledger as it leaves the service and comes back: facts by their natural keys,
 * without numbers that only this database knows.
 */
public interface LedgerPart {

  /** Parts are taken in this order, and written in it. */
  enum Order {
    RIG,
    HORIZON,
    SETUPS,
    CALIBRATIONS,
    READINGS,
    PHOTOS,
    PHOTO_MEASUREMENTS,
    PHOTO_READINGS,
    ALERTS,
    ANSWERS
  }

  Order order();

  /** First version of the layout that has this part; in older files it is empty. */
  default int sinceLayout() {
    return 1;
  }

  /** File name without its ending. */
  String name();

  /** What a row is, in a sentence. */
  String title();

  List<LedgerColumn> columns();

  /** Names of the columns that tell rows apart. */
  List<String> key();

  /**
   * Query of all rows of a rig in a fixed order, its columns those of {@link #columns}, instants
   * and all others in the types of the database.
   */
  String select(long rigId);

  /**
   * Statement that enters what lies in the table {@code staged}: the same columns, and {@code line}
   * from 1 in the order of the file.
   *
   * @param rigId 0 for the part that makes the rig
   */
  String insert(String staged, long rigId);

  /**
   * What has to be looked at, or made, before anything is entered.
   *
   * @throws InvalidInput if the rows cannot be taken
   */
  default void prepare(String staged, JdbcClient jdbc) {}
}
