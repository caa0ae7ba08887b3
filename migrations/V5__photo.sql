-- Owner: photo.
-- Photographs and what was measured on them, append-only. The versions of one file of a rig count
-- from 1; a withdrawal says why. The originals lie under limbspan.home by their hash.
create table photo (
  id              bigint           generated always as identity primary key,
  rig_id          bigint           not null references rig,
  sha256          text             not null check (sha256 ~ '^[0-9a-f]{64}$'),
  version         int              not null check (version > 0),
  file_name       text             not null check (length(file_name) between 1 and 200),
  format          text             not null check (format in ('jpeg', 'png', 'tiff')),
  byte_count      bigint           not null check (byte_count > 0),
  -- Of the upright picture.
  width_px        int              not null check (width_px > 0),
  height_px       int              not null check (height_px > 0),
  taken_at        timestamptz      not null,
  -- Who told the instant: the sender, the file with its offset, the file in the rig's time zone.
  clock           text             not null check (clock in ('sender', 'offset', 'time-zone')),
  axis            text             not null check (axis in ('horizontal', 'vertical', 'limb-fit')),
  focal_length_mm double precision check (focal_length_mm > 0),
  exposure_s      double precision check (exposure_s > 0),
  iso             int              check (iso > 0),
  f_number        double precision check (f_number > 0),
  camera          text,
  entered_at      timestamptz      not null,
  unique (rig_id, sha256, version)
);

create index photo_by_time on photo (rig_id, taken_at);

create table photo_withdrawal (
  photo_id     bigint      not null primary key references photo,
  reason       text        not null check (length(reason) > 0),
  withdrawn_at timestamptz not null
);

-- One row for each version of the method that measured a photograph; the greatest counts.
create table photo_measurement (
  photo_id             bigint           not null references photo,
  method               int              not null check (method > 0),
  outcome              text             not null check (outcome in ('measured', 'refused')),
  reason               text,
  horizontal_px        double precision check (horizontal_px > 0),
  -- Standard uncertainty: the part of this photograph alone, and the part that others share.
  horizontal_own_px    double precision check (horizontal_own_px > 0),
  horizontal_shared_px double precision check (horizontal_shared_px >= 0),
  vertical_px          double precision check (vertical_px > 0),
  vertical_own_px      double precision check (vertical_own_px > 0),
  vertical_shared_px   double precision check (vertical_shared_px >= 0),
  -- Centre, outline, arcs, edge width and so on.
  document             jsonb,
  measured_at          timestamptz      not null,
  primary key (photo_id, method),
  check (outcome <> 'measured' or num_nulls(horizontal_px, horizontal_own_px, horizontal_shared_px,
    vertical_px, vertical_own_px, vertical_shared_px, document) = 0),
  check (outcome <> 'refused' or reason is not null)
);

-- Readings that photographs make: what is to stand in the ledger and what of it was entered. It
-- follows from the tables above and is brought in line with them, also after a crash.
create table photo_reading (
  id             bigint           generated always as identity primary key,
  rig_id         bigint           not null references rig,
  taken_at       timestamptz      not null,
  axis           text             not null,
  diameter_px    double precision not null check (diameter_px > 0),
  uncertainty_px double precision not null check (uncertainty_px > 0),
  photo_ids      bigint[]         not null,
  set_aside_ids  bigint[]         not null,
  remarks        text[]           not null,
  -- The reading of the ledger; null until it is entered.
  reading_id     bigint,
  -- Set when other photographs, or a newer measurement, made another reading of it.
  retired_at     timestamptz,
  planned_at     timestamptz      not null
);

create unique index photo_reading_standing on photo_reading (rig_id, taken_at, axis)
  where retired_at is null;
create index photo_reading_by_reading on photo_reading (rig_id, reading_id);
