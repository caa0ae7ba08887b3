package org.limbspan.rig;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Optional;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

@Entity
@Immutable
@Table(name = "setup")
class SetupEntity {

  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  private @Nullable Long id;

  @SuppressWarnings("UnusedVariable") // a column, for queries
  private long rigId;

  private @Nullable Instant startedAt;
  private int version;
  private @Nullable String note;

  @SuppressWarnings("UnusedVariable") // a column, for queries
  private Instant enteredAt;

  /** Only for the object mapper, which fills every field. */
  @SuppressWarnings("NullAway.Init")
  protected SetupEntity() {}

  SetupEntity(
      long rigId,
      @Nullable Instant startedAt,
      int version,
      @Nullable String note,
      Instant enteredAt) {
    this.rigId = rigId;
    this.startedAt = startedAt;
    this.version = version;
    this.note = note;
    this.enteredAt = enteredAt;
  }

  long id() {
    return Ids.of(id);
  }

  Optional<Instant> startedAt() {
    return Optional.ofNullable(startedAt);
  }

  int version() {
    return version;
  }

  @Nullable String note() {
    return note;
  }

  /** This fact as the setup of that number, until {@code endedAt}. */
  Setup toSetup(int number, Optional<Instant> endedAt) {
    return new Setup(id(), number, startedAt(), endedAt, note);
  }
}
