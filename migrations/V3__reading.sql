-- Owner: reading.
-- Every reading ever entered, append-only. The rows of one instant and axis are versions of one
-- reading, counted from 1; the greatest counts, unless it is a withdrawal. A withdrawal repeats the
-- values it takes back. Partitions by year of taken_at are made as readings come; the key starts
-- with the rig, so that rigs can be spread over servers.
create sequence reading_id_seq;

create table reading (
  rig_id               bigint             not null references rig,
  taken_at             timestamptz        not null,
  axis                 text               not null check (axis in ('horizontal', 'vertical', 'limb-fit')),
  version              int                not null check (version > 0),
  id                   bigint             not null default nextval('reading_id_seq'),
  standing             text               not null check (standing in ('held', 'withdrawn')),
  diameter             double precision   not null check (diameter > 0 and diameter < 'infinity'),
  uncertainty          double precision   not null check (uncertainty > 0 and uncertainty < diameter),
  unit                 text               not null check (unit in ('px', 'mm', 'arcmin')),
  frames               double precision[],
  sighted_altitude_deg double precision   check (sighted_altitude_deg between -90 and 92),
  sighted_azimuth_deg  double precision   check (sighted_azimuth_deg between 0 and 360),
  exposure_s           double precision   check (exposure_s > 0),
  iso                  int                check (iso > 0),
  f_number             double precision   check (f_number > 0),
  sky                  text,
  note                 text,
  reason               text,
  entered_at           timestamptz        not null,
  primary key (rig_id, taken_at, axis, version),
  check (standing = 'held' or reason is not null)
) partition by range (taken_at);

alter sequence reading_id_seq owned by reading.id;

create index reading_by_id on reading (rig_id, id);
