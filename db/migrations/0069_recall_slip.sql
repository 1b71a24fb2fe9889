-- The slip of a recall notice that came back on paper: who signed it, when, and what became of each code, keyed in by whoever
-- handles holds. A household whose slip is back is reached.
create table book.hold_slip (
  storehouse_id uuid not null,
  hold_slip_id uuid not null default uuidv7(),
  hold_id uuid not null,
  household_id uuid,
  pantry_id uuid,
  signed_by text not null,
  written_on date not null,
  note text not null default '',
  keyed_by uuid not null,
  keyed_at timestamptz not null,
  primary key (storehouse_id, hold_slip_id),
  constraint hold_slip_hold_fk foreign key (storehouse_id, hold_id) references book.hold,
  constraint hold_slip_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint hold_slip_pantry_fk foreign key (storehouse_id, pantry_id) references book.pantry,
  constraint hold_slip_keyed_by_fk foreign key (storehouse_id, keyed_by) references book.person,
  constraint hold_slip_of_one check ((household_id is null) <> (pantry_id is null)),
  constraint hold_slip_signed check (signed_by ~ '\S'),
  constraint hold_slip_written_first check (written_on <= (keyed_at at time zone 'UTC')::date + 1)
);
create index hold_slip_by_hold on book.hold_slip (storehouse_id, hold_id);
select book.keep_in_storehouse('book.hold_slip');
create policy hold_slip_private on book.hold_slip as restrictive for all
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) in ('notice', 'leaving'))
  with check (household_id is null or (select book.current_task()) = 'notice');
grant select, insert on book.hold_slip to sheafbook_app;

create table book.hold_slip_line (
  storehouse_id uuid not null,
  hold_slip_id uuid not null,
  vessel_id uuid not null,
  became text not null,
  primary key (storehouse_id, hold_slip_id, vessel_id),
  constraint hold_slip_line_slip_fk foreign key (storehouse_id, hold_slip_id) references book.hold_slip,
  constraint hold_slip_line_vessel_fk foreign key (storehouse_id, vessel_id) references book.vessel,
  constraint hold_slip_line_became_known check (became in ('aside', 'eaten', 'given', 'thrown-away', 'never-had'))
);
select book.keep_in_storehouse('book.hold_slip_line');
create policy hold_slip_line_private on book.hold_slip_line as restrictive for all
  using ((storehouse_id, hold_slip_id) in (select s.storehouse_id, s.hold_slip_id from book.hold_slip s));
grant select, insert on book.hold_slip_line to sheafbook_app;

-- When each household acknowledged what it was told: on a screen, or by the slip of a hold that was told to it before.
create view book.notice_acknowledged with (security_invoker = true) as
  select r.storehouse_id, r.notice_id, r.household_id, r.acknowledged_at from book.notice_reading r
    where r.acknowledged_at is not null and r.household_id is not null
  union all
  select n.storehouse_id, n.notice_id, s.household_id, s.keyed_at from book.hold_slip s
    join book.notice n on n.storehouse_id = s.storehouse_id and n.household_id = s.household_id and n.kind = 'held'
      and n.path = '/api/storehouses/' || s.storehouse_id || '/holds/' || s.hold_id and n.written_at <= s.keyed_at;
grant select on book.notice_acknowledged to sheafbook_app;
