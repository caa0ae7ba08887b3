package org.limbspan.platform;

import java.io.IOException;
import java.io.InputStream;

/** The files that the rows of a rig's ledger speak of. */
public interface LedgerFiles {

  /** Longest file that is taken in, bytes. */
  long mostBytes();

  /** Whether a file may have that name here. */
  boolean isName(LedgerFile file);

  /** Passes on the files of a rig that are held whole, in a fixed order, each once. */
  void each(long rigId, Visitor visitor) throws IOException;

  InputStream open(LedgerFile file) throws IOException;

  /** A place apart for files that come in. */
  Incoming incoming() throws IOException;

  /** Takes one file after the other. */
  interface Visitor {
    void visit(LedgerFile file) throws IOException;
  }

  /** Files laid aside until their ledger is entered; closing removes what was not kept. */
  interface Incoming extends AutoCloseable {

    /**
     * Lays a file aside.
     *
     * @param bytes as many as the file says, with its hash
     */
    void lay(LedgerFile file, InputStream bytes) throws IOException;

    /**
     * Puts all that lies here in its place; on the disk when this returns. A file whose ledger is
     * not entered after all is in nobody's way.
     *
     * @throws InvalidInput if the rig's rows speak of no such file
     */
    void keep(long rigId) throws IOException;

    @Override
    void close() throws IOException;
  }
}
