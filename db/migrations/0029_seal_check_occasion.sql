-- Why a seal was checked and with which gauge, for the log; and how many containers the line had closed by then, so that a can
-- that was closed only to try the machine stands good for what came before it.
alter table book.seal_check
  add column occasion text not null default 'due',
  add column gauge text not null default '',
  add column closed_through integer not null default 0, -- older checks of a trial can stand good for nothing
  add constraint seal_check_occasion_known check (occasion in
    ('first', 'due', 'jam', 'adjustment', 'changeover', 'last', 'suspect', 'clearing')),
  add constraint seal_check_closed_counted check (closed_through >= 0 and (serial is null or closed_through = 0
    or serial <= closed_through));
