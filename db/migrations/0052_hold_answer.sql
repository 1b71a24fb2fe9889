-- What a household says became of held food: it has some, ate it, or gave it away, and when. It may say so again.
create table book.hold_answer (
  storehouse_id uuid not null,
  hold_id uuid not null,
  household_id uuid not null,
  has_some boolean not null,
  eaten_on date,
  given_on date,
  note text not null default '', -- to whom it was given, or anything else that helps
  answered_by uuid not null,
  answered_at timestamptz not null,
  primary key (storehouse_id, hold_id, household_id),
  constraint hold_answer_hold_fk foreign key (storehouse_id, hold_id) references book.hold,
  constraint hold_answer_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint hold_answer_answered_by_fk foreign key (storehouse_id, answered_by) references book.person
);
select book.keep_in_storehouse('book.hold_answer');
create policy hold_answer_private on book.hold_answer as restrictive for all
  using (household_id = (select book.current_household()) or (select book.current_task()) in ('notice', 'leaving'))
  with check (household_id = (select book.current_household()));
grant select, insert on book.hold_answer to sheafbook_app;
grant update (has_some, eaten_on, given_on, note, answered_by, answered_at) on book.hold_answer to sheafbook_app;
