package org.limbspan.notice;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.InvalidInput;
import org.limbspan.platform.NotFound;
import org.limbspan.platform.Violation;
import org.limbspan.rig.Rig;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Who is told about a rig, and what became of what they were to be told. */
@Service
public class Notices {

  private final RecipientRepository recipients;
  private final RecipientAddresses addresses;
  private final NoticeStands stands;
  private final TestNotices tests;
  private final MailCarrier mail;
  private final Clock clock;

  Notices(
      RecipientRepository recipients,
      RecipientAddresses addresses,
      NoticeStands stands,
      TestNotices tests,
      MailCarrier mail,
      Clock clock) {
    this.recipients = recipients;
    this.addresses = addresses;
    this.stands = stands;
    this.tests = tests;
    this.mail = mail;
    this.clock = clock;
  }

  /** Whether mail can be sent at all. */
  public boolean offersMail() {
    return mail.isSetUp();
  }

  /** The recipients of a rig, oldest first. */
  @Transactional(readOnly = true)
  public List<RecipientStand> of(Rig rig) {
    return recipients.ofRig(rig.id()).stream().map(stands::of).toList();
  }

  /**
   * Enters a recipient.
   *
   * @throws InvalidInput if nothing can be sent to its address
   * @throws Conflict if the rig has one with that address
   */
  @Transactional
  public EnteredRecipient enter(Rig rig, NewRecipient entered) {
    addresses.require(entered.channel(), entered.address());
    Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    Recipient recipient =
        new Recipient(
            UUID.randomUUID(),
            rig.id(),
            entered.channel(),
            entered.address(),
            entered.wishes(),
            false,
            now);
    EnteredRecipient result =
        new EnteredRecipient(recipient, entered.channel() == Channel.WEBHOOK ? Secret.cut() : null);
    if (!recipients.insert(recipient, result.secret())) {
      throw new Conflict(
          "The rig has a recipient with that address already.",
          new Violation(
              "address", entered.address(), "an address that no other recipient of this rig has"));
    }
    return result;
  }

  /**
   * Changes what a recipient is told, and when not.
   *
   * @throws NotFound if the rig has no such recipient
   */
  @Transactional
  public void change(Rig rig, UUID id, Wishes wishes, boolean paused) {
    require(recipients.change(rig.id(), id, wishes, paused), id);
  }

  /**
   * Pauses a recipient, or goes on with it.
   *
   * @throws NotFound if the rig has no such recipient
   */
  @Transactional
  public void pause(Rig rig, UUID id, boolean paused) {
    change(rig, id, find(rig, id).wishes(), paused);
  }

  /**
   * Takes a recipient away, with its address, its secret and its notices.
   *
   * @throws NotFound if the rig has no such recipient
   */
  @Transactional
  public void remove(Rig rig, UUID id) {
    require(recipients.delete(rig.id(), id), id);
  }

  /**
   * Sends a test notice at once, whatever else waits, and answers what became of it.
   *
   * @throws NotFound if the rig has no such recipient
   */
  public NoticeStand test(Rig rig, UUID id) {
    return tests.send(rig, find(rig, id));
  }

  private Recipient find(Rig rig, UUID id) {
    return recipients
        .find(id)
        .filter(recipient -> recipient.rigId() == rig.id())
        .orElseThrow(() -> missing(id));
  }

  private static void require(boolean found, UUID id) {
    if (!found) {
      throw missing(id);
    }
  }

  private static NotFound missing(UUID id) {
    return new NotFound("recipient of this rig", "id", id);
  }
}
