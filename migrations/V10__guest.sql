-- Owner: share.
-- Rigs of other observers, loaded from their data packages to compare with. No part of any ledger:
-- a guest can be removed, and loaded again.
create table guest_rig (
  id                bigint           generated always as identity primary key,
  slug              text             not null check (slug ~ '^[a-z0-9-]{1,40}$'),
  name              text             not null check (length(name) between 1 and 200),
  latitude_deg      double precision not null check (latitude_deg between -90 and 90),
  longitude_deg     double precision not null check (longitude_deg between -180 and 180),
  elevation_m       double precision not null check (elevation_m between -500 and 9000),
  position_deg      double precision not null check (position_deg between 0 and 10),
  licence           text             not null check (length(licence) between 1 and 100),
  sha256            bytea            not null unique check (length(sha256) = 32),
  loaded_at         timestamptz      not null
);

create table guest_reading (
  guest_id           bigint           not null references guest_rig on delete cascade,
  taken_at           timestamptz      not null,
  axis               text             not null check (axis in ('horizontal', 'vertical', 'limb-fit')),
  diameter_arcmin    double precision not null check (diameter_arcmin > 0 and diameter_arcmin < 600),
  uncertainty_arcmin double precision not null check (uncertainty_arcmin > 0),
  altitude_deg       double precision check (altitude_deg between -90 and 90),
  setup              integer          not null check (setup >= 0),
  primary key (guest_id, taken_at, axis)
);
