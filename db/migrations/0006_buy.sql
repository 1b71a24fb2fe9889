-- A buy from planning to closed, with its quotes, pledges, fills and orders.
create table book.buy (
  storehouse_id uuid not null references book.storehouse,
  buy_id uuid not null default uuidv7(),
  name text not null,
  stage text not null default 'planning',
  gathering_closes_at timestamptz not null,
  order_on date not null,
  landing_on date,
  landing_place text not null default '',
  rules_version integer, -- frozen when the buy is fixed
  fill_id uuid, -- the fill that the buy was fixed with
  made_by uuid not null,
  made_at timestamptz not null,
  version integer not null default 1,
  primary key (storehouse_id, buy_id),
  constraint buy_name_once unique (storehouse_id, name),
  constraint buy_named check (name ~ '\S' and length(name) <= 120),
  constraint buy_stage_known check (stage in
    ('planning', 'gathering', 'fixed', 'ordered', 'landed', 'shared-out', 'closed', 'called-off')),
  constraint buy_rules_fk foreign key (storehouse_id, rules_version) references book.rules,
  constraint buy_made_by_fk foreign key (storehouse_id, made_by) references book.person,
  constraint buy_fixed_has_rules check (stage in ('planning', 'gathering', 'called-off')
    or (rules_version is not null and fill_id is not null))
);
alter table book.entry add constraint entry_buy_fk foreign key (storehouse_id, buy_id) references book.buy;
select book.keep_in_storehouse('book.buy');
grant select, insert on book.buy to sheafbook_app;
grant update (name, stage, gathering_closes_at, order_on, landing_on, landing_place, rules_version, fill_id, version)
  on book.buy to sheafbook_app;

create table book.stage_move (
  storehouse_id uuid not null,
  stage_move_id uuid not null default uuidv7(),
  buy_id uuid not null,
  from_stage text not null,
  to_stage text not null,
  reason text not null default '',
  person_id uuid not null,
  moved_at timestamptz not null,
  primary key (storehouse_id, stage_move_id),
  constraint stage_move_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint stage_move_person_fk foreign key (storehouse_id, person_id) references book.person,
  -- The only permitted moves: job map section 2.
  constraint stage_move_along_an_edge check ((from_stage, to_stage) in (('planning', 'gathering'), ('gathering', 'fixed'),
    ('fixed', 'gathering'), ('fixed', 'ordered'), ('ordered', 'landed'), ('landed', 'shared-out'),
    ('shared-out', 'closed'), ('planning', 'called-off'), ('gathering', 'called-off'), ('fixed', 'called-off'),
    ('ordered', 'called-off')))
);
create index stage_move_by_buy on book.stage_move (storehouse_id, buy_id, stage_move_id);
select book.keep_in_storehouse('book.stage_move');
grant select, insert on book.stage_move to sheafbook_app;

create table book.buy_line (
  storehouse_id uuid not null,
  buy_line_id uuid not null default uuidv7(),
  buy_id uuid not null,
  food_id uuid not null,
  position integer not null,
  mass_unit text not null default 'lb', -- the unit its bags and pledges are counted in
  step_units integer not null default 5, -- a share of a bag comes in steps of this many
  split_rule text, -- null: the group's rule
  common_cap_grams book.amount, -- null: the group's cap
  quote_id uuid, -- the quote chosen for this line
  version integer not null default 1,
  primary key (storehouse_id, buy_line_id),
  constraint buy_line_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint buy_line_food_fk foreign key (storehouse_id, food_id) references book.food,
  constraint buy_line_food_once unique (storehouse_id, buy_id, food_id),
  constraint buy_line_of_buy unique (storehouse_id, buy_id, buy_line_id),
  constraint buy_line_unit_known check (mass_unit in ('lb', 'kg')),
  constraint buy_line_step_positive check (step_units between 1 and 1000),
  constraint buy_line_split_rule_known check (split_rule in
    ('proportional', 'equal-awards', 'equal-losses', 'first-come', 'need-first', 'rotation-of-loss'))
);
select book.keep_in_storehouse('book.buy_line');
grant select, insert, delete on book.buy_line to sheafbook_app;
grant update (step_units, split_rule, common_cap_grams, quote_id, version) on book.buy_line to sheafbook_app;

create table book.quote (
  storehouse_id uuid not null,
  quote_id uuid not null default uuidv7(),
  buy_id uuid not null,
  supplier_id uuid not null,
  reference text not null default '',
  valid_until date not null,
  minimum_goods_minor_units book.amount not null default 0,
  minimum_grams book.amount not null default 0,
  freight_free_from_minor_units book.amount,
  lead_days integer not null default 0,
  crop_year integer,
  moisture_note text not null default '',
  foreign_price_note text not null default '', -- a foreign price stays a note (ledger-notes 6.13)
  entered_by uuid not null,
  entered_at timestamptz not null,
  withdrawn_at timestamptz,
  version integer not null default 1,
  primary key (storehouse_id, quote_id),
  constraint quote_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint quote_supplier_fk foreign key (storehouse_id, supplier_id) references book.supplier,
  constraint quote_entered_by_fk foreign key (storehouse_id, entered_by) references book.person,
  constraint quote_of_buy unique (storehouse_id, buy_id, quote_id),
  constraint quote_lead_in_range check (lead_days between 0 and 365),
  constraint quote_crop_year_in_range check (crop_year between 1990 and 2200)
);
alter table book.buy_line add constraint buy_line_quote_fk
  foreign key (storehouse_id, buy_id, quote_id) references book.quote (storehouse_id, buy_id, quote_id);
create table book.quote_freight_step (
  storehouse_id uuid not null,
  quote_id uuid not null,
  from_grams book.amount not null,
  minor_units book.amount not null,
  primary key (storehouse_id, quote_id, from_grams),
  constraint quote_freight_step_quote_fk foreign key (storehouse_id, quote_id) references book.quote
);
create table book.bag_offer (
  storehouse_id uuid not null,
  bag_offer_id uuid not null default uuidv7(),
  quote_id uuid not null,
  buy_id uuid not null,
  buy_line_id uuid not null,
  bag_size integer not null, -- whole units of the line, such as 50 (lb)
  bag_grams book.amount not null,
  bag_label text not null,
  break_kind text not null default 'all-units',
  most_bags integer,
  primary key (storehouse_id, bag_offer_id),
  constraint bag_offer_quote_fk foreign key (storehouse_id, buy_id, quote_id)
    references book.quote (storehouse_id, buy_id, quote_id),
  constraint bag_offer_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint bag_offer_size_once unique (storehouse_id, quote_id, buy_line_id, bag_size),
  constraint bag_offer_size_in_range check (bag_size between 1 and 5000 and bag_grams > 0),
  constraint bag_offer_break_kind_known check (break_kind in ('all-units', 'incremental')),
  constraint bag_offer_most_positive check (most_bags > 0)
);
create table book.price_break (
  storehouse_id uuid not null,
  bag_offer_id uuid not null,
  from_bags integer not null,
  bag_price_minor_units book.amount not null,
  primary key (storehouse_id, bag_offer_id, from_bags),
  constraint price_break_offer_fk foreign key (storehouse_id, bag_offer_id) references book.bag_offer,
  constraint price_break_from_positive check (from_bags between 1 and 100000)
);
select book.keep_in_storehouse(t) from unnest(array['book.quote', 'book.quote_freight_step', 'book.bag_offer',
  'book.price_break']::regclass[]) t;
grant select, insert on book.quote, book.quote_freight_step, book.bag_offer, book.price_break to sheafbook_app;
grant delete on book.quote_freight_step, book.bag_offer, book.price_break to sheafbook_app;
grant update (reference, valid_until, minimum_goods_minor_units, minimum_grams, freight_free_from_minor_units, lead_days,
  crop_year, moisture_note, foreign_price_note, withdrawn_at, version) on book.quote to sheafbook_app;

create table book.pledge (
  storehouse_id uuid not null,
  pledge_id uuid not null default uuidv7(),
  buy_id uuid not null,
  buy_line_id uuid not null,
  household_id uuid not null,
  least_grams book.amount not null,
  wanted_grams book.amount not null,
  most_grams book.amount not null,
  whole_bags boolean not null,
  substitute_line_id uuid,
  as_typed text not null default '', -- what the person typed (ledger-notes 6.14)
  pledged_at timestamptz not null,
  ranked_at timestamptz not null, -- keeps the first time unless wanted or most rises (job map section 18)
  entered_by uuid not null,
  is_entered_for boolean not null default false,
  withdrawn_at timestamptz,
  version integer not null default 1,
  primary key (storehouse_id, pledge_id),
  constraint pledge_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint pledge_substitute_fk foreign key (storehouse_id, buy_id, substitute_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint pledge_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint pledge_entered_by_fk foreign key (storehouse_id, entered_by) references book.person,
  constraint pledge_of_household unique (storehouse_id, pledge_id, household_id),
  constraint pledge_in_order check (least_grams <= wanted_grams and wanted_grams <= most_grams and wanted_grams > 0),
  constraint pledge_substitute_is_another check (substitute_line_id <> buy_line_id)
);
create unique index pledge_once_per_line on book.pledge (storehouse_id, buy_line_id, household_id)
  where withdrawn_at is null;
create index pledge_by_buy on book.pledge (storehouse_id, buy_id);
select book.keep_in_storehouse('book.pledge');
grant select, insert on book.pledge to sheafbook_app;
grant update (least_grams, wanted_grams, most_grams, whole_bags, substitute_line_id, as_typed, ranked_at, entered_by,
  is_entered_for, withdrawn_at, version) on book.pledge to sheafbook_app;

create trigger household_still_here before insert on book.pledge
  for each row execute function book.refuse_left_household();

-- A ceiling is nobody else's business: its own household sees it, and the fill while it runs (ledger-notes 6.19).
create table book.pledge_ceiling (
  storehouse_id uuid not null,
  pledge_id uuid not null,
  household_id uuid not null,
  ceiling_minor_units book.amount not null,
  per_grams book.amount not null,
  primary key (storehouse_id, pledge_id),
  constraint pledge_ceiling_pledge_fk foreign key (storehouse_id, pledge_id, household_id)
    references book.pledge (storehouse_id, pledge_id, household_id),
  constraint pledge_ceiling_per_something check (per_grams > 0)
);
select book.keep_in_storehouse('book.pledge_ceiling');
create policy pledge_ceiling_private on book.pledge_ceiling as restrictive for all
  using (household_id = (select book.current_household())
    or (select book.current_task()) in ('fill', 'review', 'leaving'))
  with check (household_id = (select book.current_household()));
grant select, insert, update, delete on book.pledge_ceiling to sheafbook_app;

-- A fill keeps its inputs, rule and version, so that anyone can run it again and get the same bytes.
create table book.fill (
  storehouse_id uuid not null,
  fill_id uuid not null default uuidv7(),
  buy_id uuid not null,
  answer jsonb not null,
  method_version integer not null,
  override_reason text not null default '',
  made_by uuid not null,
  made_at timestamptz not null,
  primary key (storehouse_id, fill_id),
  constraint fill_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint fill_of_buy unique (storehouse_id, buy_id, fill_id),
  constraint fill_made_by_fk foreign key (storehouse_id, made_by) references book.person
);
-- Deferrable, since a buy and its fill refer to each other and an import must bring one of them first.
alter table book.buy add constraint buy_fill_fk
  foreign key (storehouse_id, buy_id, fill_id) references book.fill (storehouse_id, buy_id, fill_id) deferrable;
-- The inputs hold every ceiling, so they are read by a fill or a review only; results live in allotment.
create table book.fill_inputs (
  storehouse_id uuid not null,
  fill_id uuid not null,
  inputs jsonb not null,
  primary key (storehouse_id, fill_id),
  constraint fill_inputs_fill_fk foreign key (storehouse_id, fill_id) references book.fill
);
select book.keep_in_storehouse('book.fill');
select book.keep_in_storehouse('book.fill_inputs');
create policy fill_inputs_private on book.fill_inputs as restrictive for select
  using ((select book.current_task()) in ('fill', 'review'));
grant select, insert on book.fill, book.fill_inputs to sheafbook_app;

create table book.fixed_bags (
  storehouse_id uuid not null,
  buy_id uuid not null,
  buy_line_id uuid not null,
  bag_offer_id uuid not null,
  bags integer not null,
  goods_minor_units book.amount not null,
  primary key (storehouse_id, buy_id, buy_line_id, bag_offer_id),
  constraint fixed_bags_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint fixed_bags_offer_fk foreign key (storehouse_id, bag_offer_id) references book.bag_offer,
  constraint fixed_bags_positive check (bags > 0)
);
-- What each owner is promised of a line; a withdrawal after ordering moves mass between rows.
create table book.allotment (
  storehouse_id uuid not null,
  buy_id uuid not null,
  buy_line_id uuid not null,
  owner_id uuid not null,
  grams book.amount not null,
  units integer not null,
  whole_bags boolean not null default false,
  is_dropped boolean not null default false,
  dropped_because text not null default '',
  primary key (storehouse_id, buy_line_id, owner_id),
  constraint allotment_line_fk foreign key (storehouse_id, buy_id, buy_line_id)
    references book.buy_line (storehouse_id, buy_id, buy_line_id),
  constraint allotment_owner_fk foreign key (storehouse_id, owner_id) references book.owner,
  constraint allotment_dropped_is_nothing check (not is_dropped or grams = 0)
);
create index allotment_by_buy on book.allotment (storehouse_id, buy_id);
select book.keep_in_storehouse('book.fixed_bags');
select book.keep_in_storehouse('book.allotment');
grant select, insert, delete on book.fixed_bags, book.allotment to sheafbook_app;
grant update (grams, units) on book.allotment to sheafbook_app;

create table book.deposit_ask (
  storehouse_id uuid not null,
  buy_id uuid not null,
  household_id uuid not null,
  estimate_minor_units book.amount not null,
  asked_minor_units book.amount not null,
  due_on date not null,
  waived_by uuid,
  waiver_reason text not null default '',
  primary key (storehouse_id, buy_id, household_id),
  constraint deposit_ask_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint deposit_ask_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint deposit_ask_waived_by_fk foreign key (storehouse_id, waived_by) references book.person,
  constraint deposit_ask_waiver_explained check (waived_by is null or waiver_reason ~ '\S')
);
-- Two logins to order: each duty agrees once, and one login only once.
create table book.order_consent (
  storehouse_id uuid not null,
  buy_id uuid not null,
  duty text not null,
  person_id uuid not null,
  agreed_at timestamptz not null,
  primary key (storehouse_id, buy_id, duty),
  constraint order_consent_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint order_consent_person_fk foreign key (storehouse_id, person_id) references book.person,
  constraint order_consent_two_logins unique (storehouse_id, buy_id, person_id),
  constraint order_consent_duty_known check (duty in ('coordinator', 'treasurer'))
);
create table book.supplier_order (
  storehouse_id uuid not null,
  supplier_order_id uuid not null default uuidv7(),
  order_no integer not null,
  buy_id uuid not null,
  supplier_id uuid not null,
  quote_id uuid not null,
  ordered_on date not null,
  goods_minor_units book.amount not null,
  freight_minor_units book.amount not null,
  deliver_to text not null default '',
  note text not null default '',
  cancelled_at timestamptz,
  cancellation_note text not null default '',
  primary key (storehouse_id, supplier_order_id),
  constraint supplier_order_no_once unique (storehouse_id, order_no),
  constraint supplier_order_quote_once unique (storehouse_id, buy_id, quote_id),
  constraint supplier_order_quote_fk foreign key (storehouse_id, buy_id, quote_id)
    references book.quote (storehouse_id, buy_id, quote_id),
  constraint supplier_order_supplier_fk foreign key (storehouse_id, supplier_id) references book.supplier
);
create table book.order_line (
  storehouse_id uuid not null,
  supplier_order_id uuid not null,
  buy_line_id uuid not null,
  bag_offer_id uuid not null,
  bags integer not null,
  goods_minor_units book.amount not null,
  primary key (storehouse_id, supplier_order_id, bag_offer_id),
  constraint order_line_order_fk foreign key (storehouse_id, supplier_order_id) references book.supplier_order,
  constraint order_line_offer_fk foreign key (storehouse_id, bag_offer_id) references book.bag_offer,
  constraint order_line_buy_line_fk foreign key (storehouse_id, buy_line_id) references book.buy_line,
  constraint order_line_bags_positive check (bags > 0)
);
select book.keep_in_storehouse(t) from unnest(array['book.deposit_ask', 'book.order_consent', 'book.supplier_order',
  'book.order_line']::regclass[]) t;
grant select, insert on book.deposit_ask, book.order_consent, book.supplier_order, book.order_line to sheafbook_app;
grant delete on book.deposit_ask, book.order_consent to sheafbook_app;
grant update (waived_by, waiver_reason, estimate_minor_units, asked_minor_units, due_on) on book.deposit_ask to sheafbook_app;
grant update (cancelled_at, cancellation_note) on book.supplier_order to sheafbook_app;

create table book.withdrawal (
  storehouse_id uuid not null,
  withdrawal_id uuid not null default uuidv7(),
  buy_id uuid not null,
  household_id uuid not null,
  stage_then text not null,
  reason text not null,
  answer jsonb not null, -- who took what over, and what stays with the withdrawer
  person_id uuid not null,
  withdrawn_at timestamptz not null,
  primary key (storehouse_id, withdrawal_id),
  constraint withdrawal_buy_fk foreign key (storehouse_id, buy_id) references book.buy,
  constraint withdrawal_household_fk foreign key (storehouse_id, household_id) references book.household,
  constraint withdrawal_person_fk foreign key (storehouse_id, person_id) references book.person
);
-- Out of a buy that is ordered a household goes once; before that it may come back and go again.
create unique index withdrawal_once on book.withdrawal (storehouse_id, buy_id, household_id)
  where stage_then in ('ordered', 'landed');
create index withdrawal_by_buy on book.withdrawal (storehouse_id, buy_id);
select book.keep_in_storehouse('book.withdrawal');
grant select, insert on book.withdrawal to sheafbook_app;
