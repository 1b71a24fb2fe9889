-- What is said of a container before it is given, the matchings, and the manifests with their receipts.
create table book.gift_fact (
  storehouse_id uuid not null,
  container_id uuid not null,
  sealed_by text not null,
  label_facts text[] not null,
  is_treated_seed boolean not null,
  is_mouldy boolean not null,
  said_by uuid not null,
  said_at timestamptz not null,
  primary key (storehouse_id, container_id),
  constraint gift_fact_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint gift_fact_said_by_fk foreign key (storehouse_id, said_by) references book.person,
  constraint gift_fact_sealed_by_known check (sealed_by in ('maker', 'home', 'licensed-kitchen', 'unsealed'))
);

-- A matching keeps what it was worked out from, so that anyone can run it again.
create table book.gift_matching (
  storehouse_id uuid not null references book.storehouse,
  gift_matching_id uuid not null default uuidv7(),
  inputs jsonb not null,
  answer jsonb not null,
  made_by uuid not null,
  made_at timestamptz not null,
  primary key (storehouse_id, gift_matching_id),
  constraint gift_matching_made_by_fk foreign key (storehouse_id, made_by) references book.person
);

create table book.gift_manifest (
  storehouse_id uuid not null,
  gift_manifest_id uuid not null default uuidv7(),
  manifest_no integer not null,
  gift_matching_id uuid not null,
  pantry_id uuid not null,
  card_version integer not null, -- the card that it met
  on_day date not null,
  driver text not null,
  stage text not null default 'out',
  signed_out_by uuid not null,
  signed_out_at timestamptz not null,
  received_on date,
  receiver_duty text, -- who took it in there, by duty
  receipt_note text,
  received_by uuid, -- who wrote the receipt down
  entry_id uuid, -- null too where everything came back
  called_off_because text,
  version integer not null default 1,
  primary key (storehouse_id, gift_manifest_id),
  constraint gift_manifest_no_once unique (storehouse_id, manifest_no),
  constraint gift_manifest_matching_fk foreign key (storehouse_id, gift_matching_id) references book.gift_matching,
  constraint gift_manifest_card_fk foreign key (storehouse_id, pantry_id, card_version) references book.pantry_card,
  constraint gift_manifest_signed_out_by_fk foreign key (storehouse_id, signed_out_by) references book.person,
  constraint gift_manifest_received_by_fk foreign key (storehouse_id, received_by) references book.person,
  constraint gift_manifest_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint gift_manifest_has_a_driver check (driver ~ '\S'),
  constraint gift_manifest_stage_known check (stage in ('out', 'received', 'called-off')),
  constraint gift_manifest_received_whole check ((stage = 'received') = (received_on is not null)
    and (received_on is null) = (receiver_duty is null) and (received_on is null) = (received_by is null)
    and (entry_id is null or stage = 'received')),
  constraint gift_manifest_calling_off_explained check ((stage = 'called-off') = (called_off_because is not null))
);
create index gift_manifest_by_pantry on book.gift_manifest (storehouse_id, pantry_id, on_day);

-- Whole containers only. While it is out a container is on this manifest alone; what was accepted left the books.
create table book.gift_line (
  storehouse_id uuid not null,
  gift_manifest_id uuid not null,
  container_id uuid not null,
  position integer not null,
  owner_id uuid not null, -- whose it is: the store's, or of a household that handed it over
  grams bigint not null,
  eat_first_on date not null,
  gift_closes_on date not null,
  is_open boolean not null default true,
  is_accepted boolean,
  refused_because text,
  primary key (storehouse_id, gift_manifest_id, container_id),
  constraint gift_line_manifest_fk foreign key (storehouse_id, gift_manifest_id) references book.gift_manifest,
  constraint gift_line_container_fk foreign key (storehouse_id, container_id) references book.container,
  constraint gift_line_owner_fk foreign key (storehouse_id, owner_id) references book.owner,
  constraint gift_line_weighs_something check (grams > 0),
  constraint gift_line_refusal_explained check ((is_accepted is false) = (refused_because is not null)),
  constraint gift_line_open_unanswered check (not is_open or is_accepted is null)
);
create unique index gift_line_out_once on book.gift_line (storehouse_id, container_id) where is_open;

-- Whatever the code does: treated or mouldy food, and food in doubt, is on no manifest.
create function book.refuse_unfit_gift() returns trigger language plpgsql set search_path = pg_catalog, pg_temp as $$
begin
  if exists (select from book.gift_fact f where f.storehouse_id = new.storehouse_id and f.container_id = new.container_id
      and (f.is_treated_seed or f.is_mouldy))
    or exists (select from book.seal_hold h where h.storehouse_id = new.storehouse_id
      and h.container_id = new.container_id and h.disposition is null) then
    raise exception 'this may not be given' using errcode = 'check_violation', constraint = 'gift_is_fit';
  end if;
  return new;
end $$;
create trigger gift_is_fit before insert on book.gift_line for each row execute function book.refuse_unfit_gift();

select book.keep_in_storehouse(t) from unnest(array['book.gift_fact', 'book.gift_matching', 'book.gift_manifest',
  'book.gift_line']::regclass[]) t;
grant select, insert on book.gift_fact, book.gift_matching, book.gift_manifest, book.gift_line to sheafbook_app;
grant update (sealed_by, label_facts, is_treated_seed, is_mouldy, said_by, said_at) on book.gift_fact to sheafbook_app;
grant update (stage, received_on, receiver_duty, receipt_note, received_by, entry_id, called_off_because, version)
  on book.gift_manifest to sheafbook_app;
grant update (is_open, is_accepted, refused_because) on book.gift_line to sheafbook_app;
