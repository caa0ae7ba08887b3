-- Owner: rig.
-- What stands up around a rig, append-only: versions count from 1, the greatest counts. One without
-- points takes back what stood before, and says why.
create table horizon_line (
  id            bigint             generated always as identity primary key,
  rig_id        bigint             not null references rig,
  version       int                not null check (version > 0),
  -- In the order of the line, by azimuth; upright edges have one azimuth twice.
  azimuths_deg  double precision[] not null check (0 <= all (azimuths_deg) and 360 >= all (azimuths_deg)),
  altitudes_deg double precision[] not null check (0 <= all (altitudes_deg) and 90 >= all (altitudes_deg)),
  reason        text               check (length(reason) > 0),
  entered_at    timestamptz        not null,
  unique (rig_id, version),
  check (cardinality(azimuths_deg) = cardinality(altitudes_deg)),
  check (array_position(azimuths_deg, null) is null and array_position(altitudes_deg, null) is null),
  check (reason is null and cardinality(azimuths_deg) between 2 and 720
    or reason is not null and cardinality(azimuths_deg) = 0)
);
