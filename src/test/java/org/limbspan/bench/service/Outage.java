package org.limbspan.bench.service;

/** Something that goes wrong for a while. */
interface Outage {

  void begin() throws Exception;

  void end() throws Exception;
}
