-- Owner: notice.
-- How a recipient wants to be reminded, and after how many passes without a reading told of it.
alter table notice_recipient
  add column reminder_minutes int    not null default 60 check (reminder_minutes between 5 and 720),
  add column reminder_places  text[] not null default '{low,high}'
    check (reminder_places <@ '{low,high}' and reminder_places <> '{}'),
  add column silent_passes    int    not null default 10 check (silent_passes between 1 and 60);

-- After that nobody needs it.
alter table notice add column expires_at timestamptz;
