-- Pantries, and what each takes. A card is never changed: a newer one stands beside it, so that a gift can name the one it met.
create table book.pantry (
  storehouse_id uuid not null references book.storehouse,
  pantry_id uuid not null default uuidv7(),
  name text not null,
  address text not null,
  time_zone text not null,
  contact_duty text not null, -- whom to ask for there, by duty and never by name
  contact text not null,
  distance_metres integer not null,
  is_retired boolean not null default false,
  card_version integer not null default 1, -- the card in force
  version integer not null default 1,
  primary key (storehouse_id, pantry_id),
  constraint pantry_name_once unique (storehouse_id, name),
  constraint pantry_named check (name ~ '\S'),
  constraint pantry_not_behind_us check (distance_metres >= 0)
);

-- What a pantry takes, as it was told on a day. Null is unknown, and unknown is not accepted.
create table book.pantry_card (
  storehouse_id uuid not null,
  pantry_id uuid not null,
  card_version integer not null,
  accepts_maker_sealed boolean,
  accepts_home_packed boolean,
  accepts_licensed_kitchen boolean,
  accepts_reduced_oxygen boolean, -- home-packed dry food without oxygen: never unless the card says so
  most_days_past_best integer, -- null: not a day
  past_best_classes text[], -- for which foods that holds; null: for all
  least_life_days integer not null,
  container_kind_codes text[], -- null: any
  label_facts text[] not null,
  food_codes_wanted text[], -- null: any
  food_codes_not_wanted text[] not null,
  allergens_not_taken text[] not null,
  wants_allergens_apart boolean,
  takes_cold boolean,
  gives_receipt boolean,
  most_grams_per_visit bigint,
  most_grams_per_week bigint,
  note text not null,
  confirmed_on date not null,
  confirmed_by text not null, -- who said so there, by duty
  written_by uuid not null,
  written_at timestamptz not null,
  primary key (storehouse_id, pantry_id, card_version),
  constraint pantry_card_pantry_fk foreign key (storehouse_id, pantry_id) references book.pantry,
  constraint pantry_card_written_by_fk foreign key (storehouse_id, written_by) references book.person,
  constraint pantry_card_numbered check (card_version >= 1),
  constraint pantry_card_days_whole check (least_life_days >= 0 and most_days_past_best > 0),
  constraint pantry_card_masses_positive check (most_grams_per_visit > 0 and most_grams_per_week > 0),
  constraint pantry_card_confirmed_by_someone check (confirmed_by ~ '\S'),
  constraint pantry_card_takes_a_seal check (coalesce(accepts_maker_sealed, false) or coalesce(accepts_home_packed, false)
    or coalesce(accepts_licensed_kitchen, false)),
  constraint pantry_card_takes_a_kind check (container_kind_codes <> '{}'),
  constraint pantry_card_takes_a_food check (food_codes_wanted is null or not food_codes_wanted <@ food_codes_not_wanted)
);

-- When its door is open, on the wall of the pantry itself. Weekdays from 0, Sunday.
create table book.pantry_opening (
  storehouse_id uuid not null,
  pantry_id uuid not null,
  card_version integer not null,
  weekday smallint not null,
  opens_at text not null,
  closes_at text not null,
  primary key (storehouse_id, pantry_id, card_version, weekday, opens_at),
  constraint pantry_opening_card_fk foreign key (storehouse_id, pantry_id, card_version) references book.pantry_card,
  constraint pantry_opening_weekday_known check (weekday between 0 and 6),
  constraint pantry_opening_hours_known check (opens_at ~ '^([01]\d|2[0-3]):[0-5]\d$'
    and closes_at ~ '^([01]\d|2[0-3]):[0-5]\d$' and opens_at < closes_at)
);

select book.keep_in_storehouse(t)
  from unnest(array['book.pantry', 'book.pantry_card', 'book.pantry_opening']::regclass[]) t;
grant select, insert on book.pantry, book.pantry_card, book.pantry_opening to sheafbook_app;
grant update (name, address, time_zone, contact_duty, contact, distance_metres, is_retired, card_version, version)
  on book.pantry to sheafbook_app;
