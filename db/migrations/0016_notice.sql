-- What people are told inside the storehouse: by a coordinator, or by the book itself when a buy or a bag changes. Each
-- person reads and acknowledges alone; whether a household was reached follows from its persons and helpers.
create table book.notice (
  storehouse_id uuid not null references book.storehouse,
  notice_id uuid not null default uuidv7(),
  kind text not null,
  audience text not null,
  duty text,
  household_id uuid,
  buy_id uuid,
  about text not null, -- the thing: a buy's name, a bag's code, or a title of the writer's
  says text not null, -- what to do; of the book's own notices in English, as the API says them
  says_es text not null, -- the same in Spanish, to search in; what a person wrote stands in both as it was written
  due_on date,
  path text not null default '', -- the address of the thing in the API, where there is one
  is_safety boolean not null,
  written_by uuid not null, -- whose act it was
  written_at timestamptz not null,
  withdrawn_at timestamptz,
  primary key (storehouse_id, notice_id),
  constraint notice_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint notice_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint notice_written_by_fk foreign key (storehouse_id, written_by) references book.person,
  constraint notice_kind_known check (kind in ('written', 'stage', 'landing-moved', 'held', 'released')),
  constraint notice_audience_known check (audience in ('everyone', 'duty', 'household', 'buy')),
  constraint notice_audience_fits check ((audience = 'duty') = (duty is not null)
    and (audience = 'household') = (household_id is not null) and (audience <> 'buy' or buy_id is not null)),
  constraint notice_duty_known check (duty in
    ('coordinator', 'treasurer', 'packing_lead', 'equipment_keeper', 'reviewer')),
  constraint notice_says_something check (about ~ '\S' and says ~ '\S')
);
create index notice_by_household on book.notice (storehouse_id, household_id);
create index notice_by_buy on book.notice (storehouse_id, buy_id);

create table book.notice_reading (
  storehouse_id uuid not null,
  notice_reading_id uuid not null default uuidv7(),
  notice_id uuid not null,
  person_id uuid not null,
  household_id uuid, -- the one acted for, which may be a neighbour's under a helper's grant
  read_at timestamptz not null,
  acknowledged_at timestamptz,
  primary key (storehouse_id, notice_reading_id),
  constraint notice_reading_notice_fk foreign key (storehouse_id, notice_id) references book.notice,
  constraint notice_reading_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint notice_reading_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint notice_reading_once unique nulls not distinct (storehouse_id, notice_id, person_id, household_id),
  constraint notice_reading_read_first check (read_at <= acknowledged_at)
);
create index notice_reading_by_household on book.notice_reading (storehouse_id, household_id);

select book.keep_in_storehouse(t) from unnest(array['book.notice', 'book.notice_reading']::regclass[]) t;
-- That a bag of a household's is on hold is the household's own (job map 14, "recall hit on household"); who must know
-- whether it was reached opens it by a task, and is written down.
create policy notice_private on book.notice as restrictive for select
  using (household_id is null or household_id = (select book.current_household())
    or (select book.current_task()) in ('notice', 'leaving', 'take-along'));
grant select, insert, delete on book.notice, book.notice_reading to sheafbook_app;
grant update (withdrawn_at) on book.notice to sheafbook_app;
grant update (acknowledged_at) on book.notice_reading to sheafbook_app;
