-- A check that waited on a phone or a paper keeps the hour at which it was made beside the one at which it was written down. Up
-- to where a good one stands is told by the moments at which containers were closed, so that one that arrives late vouches for
-- nothing that was closed after it.
alter table book.seal_check
  add column recorded_at timestamptz,
  add column good_until timestamptz,
  add column good_serial integer;
update book.seal_check k set recorded_at = k.checked_at,
  good_until = least(c.closed_at, k.checked_at),
  good_serial = case when k.serial is null then k.closed_through when c.closed_at <= k.checked_at then k.serial else 0 end
  from (select s.storehouse_id, s.seal_check_id, p.closed_at from book.seal_check s
    left join book.line_closed p on p.storehouse_id = s.storehouse_id and p.packing_session_id = s.packing_session_id
      and p.line = s.line and p.serial = s.serial) c
  where c.storehouse_id = k.storehouse_id and c.seal_check_id = k.seal_check_id;
alter table book.seal_check
  alter column recorded_at set not null,
  alter column good_until set not null,
  alter column good_serial set not null,
  add constraint seal_check_made_before_recorded check (checked_at <= recorded_at),
  add constraint seal_check_good_until_made check (good_until <= checked_at and good_serial >= 0);
