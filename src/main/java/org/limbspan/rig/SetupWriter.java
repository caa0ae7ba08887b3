package org.limbspan.rig;

import java.time.Clock;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.limbspan.platform.Conflict;
import org.limbspan.platform.NotFound;
import org.limbspan.platform.Violation;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;

/** Enters and takes back setups. */
@Component
class SetupWriter {

  private final SetupRepository setups;
  private final WithdrawalRepository withdrawals;
  private final InstrumentHistories histories;
  private final UnitGuard units;
  private final LedgerRevision revision;
  private final ApplicationEventPublisher events;
  private final Clock clock;

  SetupWriter(
      SetupRepository setups,
      WithdrawalRepository withdrawals,
      InstrumentHistories histories,
      UnitGuard units,
      LedgerRevision revision,
      ApplicationEventPublisher events,
      Clock clock) {
    this.setups = setups;
    this.withdrawals = withdrawals;
    this.histories = histories;
    this.units = units;
    this.revision = revision;
    this.events = events;
    this.clock = clock;
  }

  Entered<Setup> open(Rig rig, NewSetup fact) {
    revision.lock(rig.id());
    List<SetupEntity> versions =
        setups.findAll(rig.id()).stream()
            .filter(each -> each.startedAt().equals(Optional.of(fact.startedAt())))
            .toList();
    if (versions.isEmpty()) {
      return store(rig, fact, 1);
    }
    SetupEntity last = versions.get(versions.size() - 1);
    if (isWithdrawn(rig, last)) {
      return fact.conflict() == OnConflict.SUPERSEDE
          ? store(rig, fact, last.version() + 1)
          : new Entered<>(last.toSetup(-1, Optional.empty()), Entered.Outcome.HELD_AS_WITHDRAWN);
    }
    if (!Objects.equals(last.note(), fact.note())) {
      if (fact.conflict() == OnConflict.REFUSE) {
        throw new Conflict(
            "A setup from that instant is held with another note.",
            new Violation("note", fact.note(), "'" + last.note() + "', or supersedes: true")
                .onPages("its note, '" + last.note() + "', or another time"));
      }
      withdrawals.withdrawSetup(last.id(), "superseded", clock.instant());
      return store(rig, fact, last.version() + 1);
    }
    return new Entered<>(standing(rig, last.id()), Entered.Outcome.ALREADY_HELD);
  }

  /** Takes a setup back: what it parted is one setup again. */
  void withdraw(Rig rig, long setupId, String reason) {
    revision.lock(rig.id());
    SetupEntity setup =
        setups.findAll(rig.id()).stream()
            .filter(each -> each.id() == setupId)
            .findFirst()
            .orElseThrow(() -> new NotFound("setup", "id", setupId));
    if (setup.startedAt().isEmpty()) {
      throw new Conflict(
          "The first setup is open from the beginning and cannot be taken back.",
          new Violation("id", setupId, "the id of a later setup"));
    }
    if (isWithdrawn(rig, setup)) {
      return;
    }
    withdrawals.withdrawSetup(setupId, reason, clock.instant());
    requireOneUnit(rig);
    revision.advance(rig.id());
    events.publishEvent(new SetupWithdrawn(rig.id(), rig.slug()));
  }

  private Entered<Setup> store(Rig rig, NewSetup fact, int version) {
    SetupEntity stored =
        setups.save(
            new SetupEntity(rig.id(), fact.startedAt(), version, fact.note(), clock.instant()));
    revision.advance(rig.id());
    events.publishEvent(new SetupOpened(rig.id(), rig.slug()));
    return new Entered<>(standing(rig, stored.id()), Entered.Outcome.STORED);
  }

  private Setup standing(Rig rig, long setupId) {
    return histories.setups(rig.id()).stream()
        .filter(each -> each.id() == setupId)
        .findFirst()
        .orElseThrow();
  }

  private boolean isWithdrawn(Rig rig, SetupEntity setup) {
    Set<Long> withdrawn = new HashSet<>(setups.findWithdrawnIds(rig.id()));
    return withdrawn.contains(setup.id());
  }

  private void requireOneUnit(Rig rig) {
    units
        .unitsBySetup(rig.id(), histories.setups(rig.id()))
        .forEach(
            (number, its) -> {
              if (its.size() > 1) {
                throw new Conflict(
                    "Without it, setup " + number + " would hold pixels and millimetres.",
                    new Violation("id", null, "a setup with the same unit before and after"));
              }
            });
  }
}
