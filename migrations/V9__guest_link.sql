-- Owner: rig.
-- Links with which somebody looks at a rig's ledger; shown once, kept as SHA-256 of a random word of
-- 256 bits. A withdrawn link stays, so that it is known whose it was.
create table guest_link (
  id         bigint      generated always as identity primary key,
  rig_id     bigint      not null references rig,
  name       text        not null check (length(name) between 1 and 100),
  sha256     bytea       not null unique check (length(sha256) = 32),
  created_at timestamptz not null,
  revoked_at timestamptz,
  unique (rig_id, name)
);
