package org.limbspan.bench.fault;

/** Something that goes wrong for a while. */
interface Outage {

  void begin() throws Exception;

  void end() throws Exception;
}
