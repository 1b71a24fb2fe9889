-- What came: deliveries in parts, numbered bags, lots, holds, and the money the supplier asks or owes.
create table book.lot (
  storehouse_id uuid not null,
  lot_id uuid not null, -- the same id as its unit: grams of one lot never turn into grams of another
  unit_kind text not null default 'lot',
  food_id uuid not null,
  buy_line_id uuid,
  supplier_id uuid,
  supplier_mark text not null default '',
  harvest_year integer,
  origin_note text not null default '', -- how an opening stock or a gift came, where no delivery brought it
  made_on date not null,
  primary key (storehouse_id, lot_id),
  constraint lot_unit_fk foreign key (storehouse_id, lot_id, unit_kind)
    references book.unit (storehouse_id, unit_id, kind),
  constraint lot_is_a_unit check (unit_kind = 'lot'),
  constraint lot_food_fk foreign key (storehouse_id, food_id) references book.food,
  constraint lot_line_fk foreign key (storehouse_id, buy_line_id) references book.buy_line,
  constraint lot_supplier_fk foreign key (storehouse_id, supplier_id) references book.supplier,
  constraint lot_has_an_origin check (buy_line_id is not null or origin_note ~ '\S'),
  constraint lot_harvest_in_range check (harvest_year between 1950 and 2200)
);
create unique index lot_mark_once on book.lot (storehouse_id, buy_line_id, supplier_mark) where buy_line_id is not null;
create table book.delivery (
  storehouse_id uuid not null,
  delivery_id uuid not null default uuidv7(),
  buy_id uuid not null,
  supplier_id uuid not null,
  part_no integer not null,
  carrier text not null default '',
  arrived_on date not null,
  carrier_note text not null default '',
  counted_by text not null default '',
  entered_by uuid not null,
  entered_at timestamptz not null,
  finished_at timestamptz,
  version integer not null default 1,
  primary key (storehouse_id, delivery_id),
  constraint delivery_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint delivery_supplier_fk foreign key (storehouse_id, supplier_id) references book.supplier,
  constraint delivery_entered_by_fk foreign key (storehouse_id, entered_by) references book.person,
  constraint delivery_part_once unique (storehouse_id, buy_id, part_no),
  constraint delivery_of_buy unique (storehouse_id, buy_id, delivery_id)
);
create table book.delivery_count (
  storehouse_id uuid not null,
  delivery_id uuid not null,
  bag_offer_id uuid not null,
  counted_bags integer not null,
  note text not null default '',
  primary key (storehouse_id, delivery_id, bag_offer_id),
  constraint delivery_count_delivery_fk foreign key (storehouse_id, delivery_id) references book.delivery,
  constraint delivery_count_offer_fk foreign key (storehouse_id, bag_offer_id) references book.bag_offer,
  constraint delivery_count_in_range check (counted_bags between 0 and 100000)
);
create table book.bag (
  storehouse_id uuid not null,
  bag_id uuid not null, -- the same id as its vessel
  vessel_kind text not null default 'bag',
  bag_code text not null,
  bag_no integer not null,
  buy_id uuid not null,
  buy_line_id uuid not null,
  delivery_id uuid not null,
  bag_offer_id uuid not null,
  lot_id uuid not null,
  declared_grams book.amount not null,
  gross_grams book.amount,
  tare_grams book.amount,
  net_grams book.amount not null, -- what the book takes in
  condition text not null default 'dry',
  moisture_tenths_percent integer,
  decision text not null default 'accepted',
  note text not null default '',
  is_exempt_from_weighing boolean not null default false,
  weighed_at timestamptz,
  version integer not null default 1,
  primary key (storehouse_id, bag_id),
  constraint bag_vessel_fk foreign key (storehouse_id, bag_id, vessel_kind)
    references book.vessel (storehouse_id, vessel_id, kind),
  constraint bag_is_a_vessel check (vessel_kind = 'bag'),
  constraint bag_code_once unique (storehouse_id, bag_code),
  constraint bag_number_once unique (storehouse_id, buy_line_id, bag_no),
  constraint bag_delivery_fk foreign key (storehouse_id, buy_id, delivery_id)
    references book.delivery (storehouse_id, buy_id, delivery_id),
  constraint bag_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint bag_offer_fk foreign key (storehouse_id, bag_offer_id) references book.bag_offer,
  constraint bag_lot_fk foreign key (storehouse_id, lot_id) references book.lot,
  constraint bag_condition_known check (condition in ('dry', 'torn', 'wet', 'infested', 'odour', 'wrong')),
  constraint bag_decision_known check (decision in ('accepted', 'accepted-with-note', 'refused')),
  constraint bag_moisture_in_range check (moisture_tenths_percent between 0 and 1000),
  constraint bag_weighed_whole check ((gross_grams is null) = (tare_grams is null) and gross_grams >= tare_grams),
  constraint bag_net_possible check (net_grams <= 2 * declared_grams)
);
create index bag_by_buy on book.bag (storehouse_id, buy_id);
create table book.hold (
  storehouse_id uuid not null,
  hold_id uuid not null default uuidv7(),
  bag_id uuid not null,
  reason text not null,
  held_by uuid not null,
  held_at timestamptz not null,
  finding text not null default '',
  release_asked_by uuid,
  released_by uuid,
  released_at timestamptz,
  primary key (storehouse_id, hold_id),
  constraint hold_bag_fk foreign key (storehouse_id, bag_id) references book.bag,
  constraint hold_held_by_fk foreign key (storehouse_id, held_by) references book.person,
  constraint hold_release_asked_by_fk foreign key (storehouse_id, release_asked_by) references book.person,
  constraint hold_released_by_fk foreign key (storehouse_id, released_by) references book.person,
  constraint hold_release_needs_two check (released_by is null
    or (release_asked_by is not null and release_asked_by <> released_by and finding ~ '\S'))
);
create unique index hold_one_open_per_bag on book.hold (storehouse_id, bag_id) where released_at is null;
create table book.claim (
  storehouse_id uuid not null,
  claim_id uuid not null default uuidv7(),
  buy_id uuid not null,
  supplier_id uuid not null,
  buy_line_id uuid, -- null: freight or the order as a whole
  kind text not null,
  minor_units book.amount not null,
  because text not null,
  state text not null default 'open',
  raised_on date not null,
  raised_by uuid not null,
  settled_on date,
  credited_minor_units book.amount not null default 0,
  version integer not null default 1,
  primary key (storehouse_id, claim_id),
  constraint claim_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint claim_supplier_fk foreign key (storehouse_id, supplier_id) references book.supplier,
  constraint claim_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint claim_raised_by_fk foreign key (storehouse_id, raised_by) references book.person,
  constraint claim_kind_known check (kind in ('short', 'damage', 'wrong', 'freight', 'goodwill')),
  constraint claim_state_known check (state in ('open', 'credited', 'refused')),
  constraint claim_asks_something check (minor_units > 0 and credited_minor_units <= minor_units)
);
create index claim_by_buy on book.claim (storehouse_id, buy_id);
create table book.invoice (
  storehouse_id uuid not null,
  invoice_id uuid not null default uuidv7(),
  buy_id uuid not null,
  supplier_id uuid not null, -- a carrier is a supplier too
  number text not null,
  on_day date not null,
  foreign_note text not null default '',
  entered_by uuid not null,
  entered_at timestamptz not null,
  entry_id uuid not null,
  voided_by uuid, -- entered by mistake: its entry is reversed, and the number is free again
  voided_at timestamptz,
  void_reason text not null default '',
  primary key (storehouse_id, invoice_id),
  constraint invoice_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint invoice_supplier_fk foreign key (storehouse_id, supplier_id) references book.supplier,
  constraint invoice_numbered check (number ~ '\S'),
  constraint invoice_entered_by_fk foreign key (storehouse_id, entered_by) references book.person,
  constraint invoice_entry_fk foreign key (storehouse_id, entry_id) references book.entry,
  constraint invoice_voided_by_fk foreign key (storehouse_id, voided_by) references book.person,
  constraint invoice_void_explained check (voided_at is null or (voided_by is not null and void_reason ~ '\S'))
);
create unique index invoice_number_once on book.invoice (storehouse_id, supplier_id, number) where voided_at is null;
create index invoice_by_buy on book.invoice (storehouse_id, buy_id);
create table book.invoice_line (
  storehouse_id uuid not null,
  invoice_id uuid not null,
  line_no integer not null,
  kind text not null,
  buy_id uuid not null,
  buy_line_id uuid,
  minor_units book.amount not null,
  primary key (storehouse_id, invoice_id, line_no),
  constraint invoice_line_invoice_fk foreign key (storehouse_id, invoice_id) references book.invoice,
  constraint invoice_line_buy_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint invoice_line_kind_known check (kind in ('goods', 'freight', 'other')),
  constraint invoice_line_goods_name_a_line check ((kind = 'goods') = (buy_line_id is not null)),
  constraint invoice_line_asks_something check (minor_units > 0)
);
select book.keep_in_storehouse(t) from unnest(array['book.lot', 'book.delivery', 'book.delivery_count', 'book.bag',
  'book.hold', 'book.claim', 'book.invoice', 'book.invoice_line']::regclass[]) t;
grant select, insert on book.lot, book.delivery, book.delivery_count, book.bag, book.hold, book.claim, book.invoice,
  book.invoice_line to sheafbook_app;
grant update (harvest_year) on book.lot to sheafbook_app; -- read off a later bag of the same mark
grant update (voided_by, voided_at, void_reason) on book.invoice to sheafbook_app;
grant update (carrier, carrier_note, counted_by, finished_at, version) on book.delivery to sheafbook_app;
grant update (counted_bags, note) on book.delivery_count to sheafbook_app;
grant update (gross_grams, tare_grams, net_grams, condition, moisture_tenths_percent, decision, note,
  is_exempt_from_weighing, weighed_at, version) on book.bag to sheafbook_app;
grant update (finding, release_asked_by, released_by, released_at) on book.hold to sheafbook_app;
grant update (state, settled_on, credited_minor_units, version) on book.claim to sheafbook_app;
