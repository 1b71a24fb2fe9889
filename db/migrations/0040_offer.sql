-- Whole containers that a household, or the store from its common stock, lets other members have.
create table book.offer (
  storehouse_id uuid not null references book.storehouse,
  offer_id uuid not null default uuidv7(),
  household_id uuid, -- whose they are; null: common stock
  food_id uuid not null,
  price_kind text not null,
  window_hours integer not null,
  offered_at timestamptz not null,
  open_at timestamptz not null, -- from then on it is for everybody
  closes_at timestamptz not null,
  goes_to_pantry boolean not null, -- what nobody takes may be given away
  note text not null default '',
  offered_by uuid not null,
  primary key (storehouse_id, offer_id),
  constraint offer_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint offer_food_fk foreign key (storehouse_id, food_id) references book.food,
  constraint offer_offered_by_fk foreign key (storehouse_id, offered_by) references book.person,
  constraint offer_times_once unique (storehouse_id, offer_id, offered_at, closes_at),
  constraint offer_price_kind_known check (price_kind in ('gift', 'named', 'cost')),
  constraint offer_window_in_range check (window_hours between 1 and 336),
  constraint offer_runs_forward check (offered_at < closes_at and offered_at <= open_at and open_at <= closes_at)
);
create index offer_by_household on book.offer (storehouse_id, household_id);

-- A container stands in one offer at a time, from its offering until it is taken, taken back, or the offer closes.
create table book.offer_container (
  storehouse_id uuid not null,
  offer_id uuid not null,
  container_id uuid not null,
  grams book.amount not null,
  price_minor_units book.amount not null,
  offered_at timestamptz not null,
  closes_at timestamptz not null,
  ended_at timestamptz,
  ended_how text,
  primary key (storehouse_id, offer_id, container_id),
  constraint offer_container_offer_fk foreign key (storehouse_id, offer_id, offered_at, closes_at)
    references book.offer (storehouse_id, offer_id, offered_at, closes_at),
  constraint offer_container_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint offer_container_holds_some check (grams > 0),
  constraint offer_container_ended_whole check ((ended_at is null) = (ended_how is null)),
  constraint offer_container_ended_how_known check (ended_how in ('taken', 'taken-back')),
  constraint offer_container_ended_in_time check (ended_at between offered_at and closes_at),
  constraint offer_container_once exclude using gist (storehouse_id with =, container_id with =,
    tstzrange(offered_at, coalesce(ended_at, closes_at)) with &&)
);
create index offer_container_by_container on book.offer_container (storehouse_id, container_id);

-- Who is asked first, and when. The order tells how long a household's stock lasts, so each sees its own row alone.
create table book.offer_turn (
  storehouse_id uuid not null,
  offer_id uuid not null,
  household_id uuid not null,
  group_no integer not null,
  from_at timestamptz not null,
  until_at timestamptz not null,
  passed_at timestamptz,
  primary key (storehouse_id, offer_id, household_id),
  constraint offer_turn_offer_fk foreign key (storehouse_id, offer_id) references book.offer,
  constraint offer_turn_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint offer_turn_runs_forward check (group_no > 0 and from_at <= until_at)
);
create index offer_turn_by_household on book.offer_turn (storehouse_id, household_id);

-- Who took a container: the two alone know (job map 14, "offers taken").
create table book.offer_claim (
  storehouse_id uuid not null,
  offer_id uuid not null,
  container_id uuid not null,
  household_id uuid not null,
  entry_id uuid not null,
  claimed_at timestamptz not null,
  claimed_by uuid not null,
  constraint offer_claim_once primary key (storehouse_id, offer_id, container_id),
  constraint offer_claim_container_fk foreign key (storehouse_id, offer_id, container_id)
    references book.offer_container (storehouse_id, offer_id, container_id),
  constraint offer_claim_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint offer_claim_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint offer_claim_claimed_by_fk foreign key (storehouse_id, claimed_by) references book.person
);
create index offer_claim_by_household on book.offer_claim (storehouse_id, household_id);

select book.keep_in_storehouse(t) from unnest(array['book.offer', 'book.offer_container', 'book.offer_turn',
  'book.offer_claim']::regclass[]) t;
create policy offer_turn_private on book.offer_turn as restrictive for all
  using (household_id = (select book.current_household()) or (select book.current_task()) in ('need-first', 'leaving'));
create policy offer_claim_private on book.offer_claim as restrictive for select
  using (household_id = (select book.current_household()) or (select book.current_task()) in ('need-first', 'leaving')
    or (storehouse_id, offer_id) in (select o.storehouse_id, o.offer_id from book.offer o
      where o.household_id = (select book.current_household())));
grant select, insert on book.offer, book.offer_container, book.offer_turn, book.offer_claim to sheafbook_app;
grant update (open_at, goes_to_pantry) on book.offer to sheafbook_app;
grant update (ended_at, ended_how) on book.offer_container to sheafbook_app;
grant update (passed_at, from_at, until_at) on book.offer_turn to sheafbook_app;
grant delete on book.offer_turn to sheafbook_app;
grant update (household_id) on book.container to sheafbook_app;

alter table book.notice drop constraint notice_kind_known;
alter table book.notice add constraint notice_kind_known check (kind in ('written', 'stage', 'landing-moved', 'held',
  'released', 'packing', 'offer'));
