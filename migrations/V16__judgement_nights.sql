-- Module watch. The nights of a judgement are most of it, a megabyte after ten years, and stay as they are from one reading to
-- the next: they are kept in parts, of which only those that changed are written. Part n holds the nights from n * 256 on.
create table judgement_nights (
  rig_id   bigint not null,
  number   int    not null check (number >= 0),
  document json   not null,
  primary key (rig_id, number)
);
