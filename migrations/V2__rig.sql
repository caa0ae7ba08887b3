-- Owner: rig.
-- What describes the instrument, append-only: a correction is a new version, a withdrawal a fact of
-- its own. Versions of one fact count from 1; the greatest is the one that counts.
create table rig (
  id              bigint           generated always as identity primary key,
  slug            text             not null unique check (slug ~ '^[a-z0-9-]{1,40}$'),
  name            text             not null check (length(name) between 1 and 200),
  latitude_deg    double precision not null check (latitude_deg between -90 and 90),
  longitude_deg   double precision not null check (longitude_deg between -180 and 180),
  elevation_m     double precision not null check (elevation_m between -500 and 9000),
  time_zone       text             not null,
  note            text,
  -- Counts every change to what is held of this rig; its row lock puts writers in a queue.
  ledger_revision bigint           not null default 0,
  created_at      timestamptz      not null
);

-- From started_at on, camera, zoom or mount is another; null is the beginning.
create table setup (
  id         bigint      generated always as identity primary key,
  rig_id     bigint      not null references rig,
  started_at timestamptz,
  version    int         not null check (version > 0),
  note       text,
  entered_at timestamptz not null,
  unique nulls not distinct (rig_id, started_at, version)
);

create table setup_withdrawal (
  setup_id     bigint      not null primary key references setup,
  reason       text        not null check (length(reason) > 0),
  withdrawn_at timestamptz not null
);

-- One photograph of a target, or of a pair of stars: those are told apart by their separation.
create table calibration (
  id                           bigint           generated always as identity primary key,
  rig_id                       bigint           not null references rig,
  taken_at                     timestamptz      not null,
  method                       text             not null check (method in ('target', 'star-pair')),
  version                      int              not null check (version > 0),
  target_length_mm             double precision check (target_length_mm > 0),
  target_length_uncertainty_mm double precision check (target_length_uncertainty_mm >= 0),
  target_distance_m            double precision check (target_distance_m > 0),
  target_distance_uncertainty_m double precision check (target_distance_uncertainty_m >= 0),
  separation_arcmin            double precision check (separation_arcmin > 0 and separation_arcmin < 10800),
  separation_uncertainty_arcmin double precision check (separation_uncertainty_arcmin >= 0),
  measured                     double precision not null check (measured > 0),
  measured_uncertainty         double precision not null check (measured_uncertainty > 0 and measured_uncertainty < measured),
  unit                         text             not null check (unit in ('px', 'mm')),
  note                         text,
  entered_at                   timestamptz      not null,
  unique nulls not distinct (rig_id, taken_at, method, separation_arcmin, version),
  check (method <> 'target'
    or num_nulls(target_length_mm, target_length_uncertainty_mm, target_distance_m, target_distance_uncertainty_m) = 0
    and num_nonnulls(separation_arcmin, separation_uncertainty_arcmin) = 0),
  check (method <> 'star-pair'
    or num_nulls(separation_arcmin, separation_uncertainty_arcmin) = 0
    and num_nonnulls(target_length_mm, target_length_uncertainty_mm, target_distance_m, target_distance_uncertainty_m) = 0)
);

create table calibration_withdrawal (
  calibration_id bigint      not null primary key references calibration,
  reason         text        not null check (length(reason) > 0),
  withdrawn_at   timestamptz not null
);
