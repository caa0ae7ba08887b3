package org.limbspan.notice;

/** Brings a notice to recipients of one channel. */
interface Carrier {

  Channel channel();

  /**
   * Hands a notice over.
   *
   * @param secret of a webhook; empty for mail
   * @throws Undelivered if it is not certain that it arrived
   */
  void carry(Notice notice, Recipient recipient, String secret) throws Undelivered;
}
