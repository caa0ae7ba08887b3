-- Owner: photo.
-- Files that came and gave no diameter, so that a page can still tell of those that a folder took. A file is told
-- once, as it was refused last, and no more once it is measured. No part of the ledger: the newest of each rig are kept.
create table photo_refusal (
  id                bigint      generated always as identity primary key,
  rig_id            bigint      not null references rig,
  sha256            text        not null check (sha256 ~ '^[0-9a-f]{64}$'),
  file_name         text        not null check (length(file_name) between 1 and 200),
  -- Null where nothing tells it.
  taken_at          timestamptz,
  code              text        not null check (length(code) > 0),
  reason            text        not null check (length(reason) > 0),
  reason_on_pages   text        not null check (length(reason_on_pages) > 0),
  question          text,
  question_on_pages text,
  refused_at        timestamptz not null,
  unique (rig_id, sha256)
);

create index photo_measurement_refused on photo_measurement (photo_id) where outcome = 'refused';
