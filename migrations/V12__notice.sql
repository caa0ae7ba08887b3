-- Owner: notice.
-- Whom the owner wants told, and what is to be told. No part of any ledger: addresses and secrets
-- travel with no archive.
create table notice_recipient (
  id         uuid        not null primary key,
  rig_id     bigint      not null,
  channel    text        not null check (channel in ('mail', 'webhook')),
  address    text        not null check (length(address) between 1 and 2000),
  -- With which a webhook's notices are signed; it must be readable for that.
  secret     text        check ((channel = 'webhook') = (secret is not null)),
  -- The kinds of notice wanted; none is.
  notices    text[]      not null,
  -- Local time of the rig; from the later to the earlier of the next day where from is greater.
  quiet_from time,
  quiet_to   time        check ((quiet_from is null) = (quiet_to is null) and quiet_from <> quiet_to),
  paused     boolean     not null default false,
  created_at timestamptz not null,
  unique (rig_id, channel, address)
);

-- Written in the transaction of what it tells, delivered later, kept afterwards. The id follows from
-- recipient, kind and what is told, so that nothing is written twice.
create table notice (
  id           uuid        not null primary key,
  -- The order in which a recipient is told.
  number       bigint      not null generated always as identity,
  recipient_id uuid        not null references notice_recipient on delete cascade,
  kind         text        not null,
  -- What is told, by kind and time; the same in all notices about one thing.
  about        text        not null,
  -- As it is sent, JSON.
  document     text        not null,
  written_at   timestamptz not null,
  -- When it was first due, and when it is due next.
  due_first_at timestamptz not null,
  due_at       timestamptz not null,
  attempts     int         not null default 0 check (attempts >= 0),
  last_error   text,
  -- Until then one deliverer has it and no other takes it.
  lease_until  timestamptz,
  delivered_at timestamptz,
  given_up_at  timestamptz check (delivered_at is null or given_up_at is null)
);

create index notice_waiting on notice (recipient_id, number)
  where delivered_at is null and given_up_at is null;
create index notice_by_recipient on notice (recipient_id, number);
