package org.limbspan.rig;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.time.ZoneId;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;
import org.limbspan.sky.Site;

@Entity
@Immutable
@Table(name = "rig")
class RigEntity {

  @Id
  @GeneratedValue(strategy = GenerationType.IDENTITY)
  private @Nullable Long id;

  private String slug;
  private String name;
  private double latitudeDeg;
  private double longitudeDeg;

  @Column(name = "elevation_m")
  private double elevationM;

  private String timeZone;
  private @Nullable String note;
  private Instant createdAt;

  /** Only for the object mapper, which fills every field. */
  @SuppressWarnings("NullAway.Init")
  protected RigEntity() {}

  RigEntity(NewRig rig, Instant createdAt) {
    this.slug = rig.slug();
    this.name = rig.name();
    this.latitudeDeg = rig.site().latitudeDeg();
    this.longitudeDeg = rig.site().longitudeDeg();
    this.elevationM = rig.site().elevationM();
    this.timeZone = rig.timeZone().getId();
    this.note = rig.note();
    this.createdAt = createdAt;
  }

  Rig toRig() {
    return new Rig(
        Ids.of(id),
        slug,
        name,
        new Site(latitudeDeg, longitudeDeg, elevationM),
        ZoneId.of(timeZone),
        note,
        createdAt);
  }
}
