-- Owner: watch.
-- What follows from the ledger, kept so that pages need not wait for it. All of it but the answers
-- can be thrown away: it is computed again, to the same result.
create table judgement (
  rig_id    bigint      not null primary key,
  -- The rig's ledger revision that this judgement reflects.
  revision  bigint      not null,
  -- Version of the computation; another one is judged again.
  method    int         not null,
  judged_at timestamptz not null,
  document  jsonb       not null
);

create table alert (
  id             uuid             not null primary key,
  rig_id         bigint           not null,
  kind           text             not null,
  onset_from     timestamptz      not null,
  onset_to       timestamptz      not null check (onset_to >= onset_from),
  evidence_at    timestamptz      not null,
  raised_at      timestamptz      not null,
  -- Whether the last judgement still finds it; one that is gone stays only if it was answered.
  standing       boolean          not null,
  document       jsonb            not null
);

create index alert_by_rig on alert (rig_id, evidence_at);

-- Facts of the ledger: what the owner said of an alert.
create table alert_answer (
  id          bigint      generated always as identity primary key,
  rig_id      bigint      not null,
  alert_id    uuid        not null,
  cause       text        not null check (cause in ('zoom-moved', 'recalibrated', 'weather', 'wrong-entry', 'unexplained')),
  note        text        check (length(note) between 1 and 2000),
  changed_at  timestamptz,
  -- What was done with it: a setup opened, readings withdrawn or relabelled.
  consequence text,
  answered_at timestamptz not null
);

create index alert_answer_by_rig on alert_answer (rig_id, answered_at);
