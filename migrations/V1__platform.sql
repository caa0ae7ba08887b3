-- Owner: platform.
-- Events between modules, kept until they are handled: the table that Spring Modulith 2.1 reads and
-- writes, in its second structure for PostgreSQL.
create table event_publication (
  id                     uuid        not null primary key,
  listener_id            text        not null,
  event_type             text        not null,
  serialized_event       text        not null,
  publication_date       timestamptz not null,
  completion_date        timestamptz,
  status                 text,
  completion_attempts    int,
  last_resubmission_date timestamptz
);

create index event_publication_serialized_event_hash_idx
  on event_publication using hash (serialized_event);

create index event_publication_by_completion_date_idx
  on event_publication (completion_date);
