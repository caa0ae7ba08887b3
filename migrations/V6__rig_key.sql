-- Owner: rig.
-- Keys with which a rig's own computer sends what it measured; shown once, kept as SHA-256 of a
-- random key of 256 bits. A withdrawn key stays, so that it is known whose it was.
create table rig_key (
  id         bigint      generated always as identity primary key,
  rig_id     bigint      not null references rig,
  name       text        not null check (length(name) between 1 and 100),
  sha256     bytea       not null unique check (length(sha256) = 32),
  created_at timestamptz not null,
  revoked_at timestamptz,
  unique (rig_id, name)
);
