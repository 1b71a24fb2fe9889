-- What a packing day cost and who bears it. Charges are shares of each cost by the containers that a household filled.
create table book.session_settlement (
  storehouse_id uuid not null references book.storehouse,
  session_settlement_id uuid not null default uuidv7(),
  packing_session_id uuid not null,
  entry_id uuid, -- null when the day cost nothing
  note text not null default '',
  settled_by uuid not null,
  settled_at timestamptz not null,
  undone_at timestamptz,
  undone_entry_id uuid,
  primary key (storehouse_id, session_settlement_id),
  constraint session_settlement_session_fk foreign key (storehouse_id, packing_session_id) references book.packing_session,
  constraint session_settlement_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint session_settlement_undone_entry_fk foreign key (storehouse_id, undone_entry_id) references book.entry,
  constraint session_settlement_settled_by_fk foreign key (storehouse_id, settled_by) references book.person,
  constraint session_settlement_undone_whole check (undone_entry_id is null or undone_at is not null)
);
create unique index session_settlement_one_standing on book.session_settlement (storehouse_id, packing_session_id)
  where undone_at is null;

create table book.session_cost (
  storehouse_id uuid not null,
  session_settlement_id uuid not null,
  position smallint not null,
  kind text not null,
  what text not null, -- the supply, the thing that was lent, or what was bought besides
  supply_id uuid,
  pieces integer,
  minor_units book.amount not null,
  borne_by text not null,
  primary key (storehouse_id, session_settlement_id, position),
  constraint session_cost_settlement_fk foreign key (storehouse_id, session_settlement_id)
    references book.session_settlement,
  constraint session_cost_supply_fk foreign key (storehouse_id, supply_id) references book.supply,
  constraint session_cost_kind_known check (kind in ('supplies', 'scrap', 'line-fee', 'equipment-fee', 'sundries')),
  constraint session_cost_borne_by_known check (borne_by in ('containers', 'storehouse')),
  constraint session_cost_counts_pieces check ((supply_id is null) = (pieces is null) and pieces > 0)
);

create table book.session_share (
  storehouse_id uuid not null,
  session_settlement_id uuid not null,
  position smallint not null,
  household_id uuid not null,
  containers integer not null, -- by which the cost is shared
  minor_units book.amount not null,
  primary key (storehouse_id, session_settlement_id, position, household_id),
  constraint session_share_cost_fk foreign key (storehouse_id, session_settlement_id, position)
    references book.session_cost,
  constraint session_share_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint session_share_counts_containers check (containers >= 0)
);
create index session_share_by_household on book.session_share (storehouse_id, household_id);

select book.keep_in_storehouse(t)
  from unnest(array['book.session_settlement', 'book.session_cost', 'book.session_share']::regclass[]) t;
grant select, insert on book.session_settlement, book.session_cost, book.session_share to sheafbook_app;
grant update (undone_at, undone_entry_id) on book.session_settlement to sheafbook_app;
