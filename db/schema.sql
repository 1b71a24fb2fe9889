-- What a freshly migrated database holds, read from its catalogue. Printed by `npm run schema` and compared in the
-- tests; not meant to be run. A migration, its Drizzle tables and this file change together.

role sheafbook_app login
role sheafbook_housekeeping nologin
role sheafbook_owner nologin member of sheafbook_housekeeping, sheafbook_poster
role sheafbook_poster nologin
grant connect on the database to sheafbook_app
grant connect, create on the database to sheafbook_owner
extension btree_gist in public
schema book
  grant usage to sheafbook_app
  grant usage to sheafbook_housekeeping
  grant usage to sheafbook_poster
schema door
  grant usage to sheafbook_app
schema graphile_worker
  grant usage to sheafbook_app
schema migration
schema public
  grant usage to public

domain book.amount as bigint constraint amount_exact_in_a_double CHECK (((VALUE >= 0) AND (VALUE <= '9007199254740991'::bigint)))

table book.absorber_pack row level security
  storehouse_id uuid not null
  absorber_pack_id uuid default uuidv7() not null
  packing_session_id uuid not null
  size_millilitres integer not null
  packets integer not null
  opened_at timestamp with time zone not null
  opened_by uuid not null
  shut_at timestamp with time zone
  packets_left integer
  constraint absorber_pack_pkey PRIMARY KEY (storehouse_id, absorber_pack_id)
  constraint absorber_pack_opened_by_fk FOREIGN KEY (storehouse_id, opened_by) REFERENCES book.person(storehouse_id, person_id)
  constraint absorber_pack_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint absorber_pack_holds_some CHECK (((size_millilitres > 0) AND ((packets >= 1) AND (packets <= 10000))))
  constraint absorber_pack_shut_after_opened CHECK ((shut_at >= opened_at))
  constraint absorber_pack_shut_whole CHECK ((((shut_at IS NULL) = (packets_left IS NULL)) AND ((packets_left >= 0) AND (packets_left <= packets))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (packets_left, shut_at) to sheafbook_app

table book.account with (fillfactor=60) row level security
  storehouse_id uuid not null
  account_id uuid default uuidv7() not null
  unit_id uuid not null
  unit_kind text not null
  kind text not null
  vessel_id uuid
  vessel_kind text
  owner_id uuid
  cause_id uuid
  guard text not null
  closed boolean default false not null
  inflow book.amount default 0 not null
  outflow book.amount default 0 not null
  constraint account_pkey PRIMARY KEY (storehouse_id, account_id)
  constraint account_id_and_unit UNIQUE (storehouse_id, account_id, unit_id)
  constraint account_once UNIQUE NULLS NOT DISTINCT (storehouse_id, unit_id, kind, vessel_id, owner_id, cause_id)
  constraint account_owner_fk FOREIGN KEY (storehouse_id, owner_id) REFERENCES book.owner(storehouse_id, owner_id)
  constraint account_unit_fk FOREIGN KEY (storehouse_id, unit_id, unit_kind) REFERENCES book.unit(storehouse_id, unit_id, kind)
  constraint account_vessel_fk FOREIGN KEY (storehouse_id, vessel_id, vessel_kind) REFERENCES book.vessel(storehouse_id, vessel_id, kind)
  constraint account_cause_fits_kind CHECK (((cause_id IS NOT NULL) OR (kind <> ALL (ARRAY['supplier_claim'::text, 'buy_deposit'::text, 'loan_deposit'::text, 'buy_clearing'::text, 'session_clearing'::text, 'common_stock'::text]))))
  constraint account_closed_at_zero CHECK (((NOT closed) OR ((inflow)::bigint = (outflow)::bigint)))
  constraint account_guard_fits_kind CHECK ((guard =
CASE
    WHEN ((kind = ANY (ARRAY['buy_deposit'::text, 'loan_deposit'::text])) OR (vessel_kind = 'supplier'::text)) THEN 'not_above'::text
    WHEN ((kind = 'pieces'::text) AND (owner_id IS NULL)) THEN 'none'::text
    WHEN (kind = ANY (ARRAY['cash_tin'::text, 'supplier_claim'::text, 'supplies'::text, 'common_stock'::text, 'equipment'::text, 'pieces'::text])) THEN 'not_below'::text
    WHEN (vessel_kind = ANY (ARRAY['transformed'::text, 'unexplained'::text, 'moisture'::text])) THEN 'none'::text
    WHEN (kind = 'mass'::text) THEN 'not_below'::text
    ELSE 'none'::text
END))
  constraint account_kind_known CHECK ((kind = ANY (ARRAY['bank'::text, 'cash_tin'::text, 'household'::text, 'supplier_claim'::text, 'supplies'::text, 'common_stock'::text, 'equipment'::text, 'supplier'::text, 'buy_deposit'::text, 'loan_deposit'::text, 'buy_clearing'::text, 'session_clearing'::text, 'store_fund'::text, 'given_value'::text, 'line_fees'::text, 'equipment_fees'::text, 'cash_gifts'::text, 'losses'::text, 'bank_charges'::text, 'repairs'::text, 'debt_written_off'::text, 'mass'::text, 'pieces'::text])))
  constraint account_kitchen_is_its_owners CHECK (((vessel_kind <> 'kitchen'::text) OR (vessel_id = owner_id)))
  constraint account_never_above_zero CHECK (((guard <> 'not_above'::text) OR ((inflow)::bigint <= (outflow)::bigint)))
  constraint account_never_below_zero CHECK (((guard <> 'not_below'::text) OR ((inflow)::bigint >= (outflow)::bigint)))
  constraint account_owner_fits_kind CHECK (((owner_id IS NOT NULL) OR (kind <> ALL (ARRAY['household'::text, 'supplier'::text, 'supplier_claim'::text, 'buy_deposit'::text, 'loan_deposit'::text, 'mass'::text]))))
  constraint account_unit_fits_kind CHECK ((unit_kind =
CASE kind
    WHEN 'mass'::text THEN 'lot'::text
    WHEN 'pieces'::text THEN 'supply'::text
    ELSE 'currency'::text
END))
  constraint account_vessel_fits_kind CHECK ((((kind = 'mass'::text) = (vessel_id IS NOT NULL)) AND ((vessel_id IS NULL) = (vessel_kind IS NULL))))
  CREATE INDEX account_by_cause ON book.account USING btree (storehouse_id, cause_id) WHERE (cause_id IS NOT NULL)
  CREATE INDEX account_by_owner ON book.account USING btree (storehouse_id, owner_id)
  CREATE INDEX account_by_vessel ON book.account USING btree (storehouse_id, vessel_id) WHERE (vessel_id IS NOT NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert (account_id, cause_id, guard, kind, owner_id, storehouse_id, unit_id, unit_kind, vessel_id, vessel_kind), select to sheafbook_app
  grant select, update (closed, inflow, outflow) to sheafbook_poster

table book.allotment row level security
  storehouse_id uuid not null
  buy_id uuid not null
  buy_line_id uuid not null
  owner_id uuid not null
  grams book.amount not null
  units integer not null
  whole_bags boolean default false not null
  is_dropped boolean default false not null
  dropped_because text default ''::text not null
  constraint allotment_pkey PRIMARY KEY (storehouse_id, buy_line_id, owner_id)
  constraint allotment_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint allotment_owner_fk FOREIGN KEY (storehouse_id, owner_id) REFERENCES book.owner(storehouse_id, owner_id)
  constraint allotment_dropped_is_nothing CHECK (((NOT is_dropped) OR ((grams)::bigint = 0)))
  CREATE INDEX allotment_by_buy ON book.allotment USING btree (storehouse_id, buy_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (grams, units) to sheafbook_app

view book.any_look with (security_invoker=true)
  storehouse_id uuid
  inspection_id uuid
  container_id uuid
  household_id uuid
  how text
  findings text[]
  best text
  outcome text
  damaged_kernels integer
  sample_grams integer
  note text
  entry_id uuid
  inspected_at timestamp with time zone
  inspected_on date
  grant select to sheafbook_app
  as
 SELECT inspection.storehouse_id,
    inspection.inspection_id,
    inspection.container_id,
    inspection.household_id,
    inspection.how,
    inspection.findings,
    inspection.best,
    inspection.outcome,
    inspection.damaged_kernels,
    inspection.sample_grams,
    inspection.note,
    inspection.entry_id,
    inspection.inspected_at,
    inspection.inspected_on
   FROM book.inspection
UNION ALL
 SELECT l.storehouse_id,
    l.lid_check_id AS inspection_id,
    l.container_id,
    l.household_id,
    'outside'::text AS how,
    ARRAY['loose-seal'::text] AS findings,
    'kitchen-soon'::text AS best,
    'kitchen-soon'::text AS outcome,
    NULL::integer AS damaged_kernels,
    NULL::integer AS sample_grams,
    l.note,
    NULL::uuid AS entry_id,
    l.checked_at AS inspected_at,
    (l.checked_at AT TIME ZONE s.time_zone)::date AS inspected_on
   FROM book.lid_check l
     JOIN book.storehouse s ON s.storehouse_id = l.storehouse_id
  WHERE l.says = 'loose'::text AND NOT (EXISTS ( SELECT
           FROM book.lid_check h
          WHERE h.storehouse_id = l.storehouse_id AND h.container_id = l.container_id AND h.says = 'held'::text AND h.closed_at > l.closed_at));

table book.bag row level security
  storehouse_id uuid not null
  bag_id uuid not null
  vessel_kind text default 'bag'::text not null
  bag_code text not null
  bag_no integer not null
  buy_id uuid not null
  buy_line_id uuid not null
  delivery_id uuid not null
  bag_offer_id uuid not null
  lot_id uuid not null
  declared_grams book.amount not null
  gross_grams book.amount
  tare_grams book.amount
  net_grams book.amount not null
  condition text default 'dry'::text not null
  moisture_tenths_percent integer
  decision text default 'accepted'::text not null
  note text default ''::text not null
  is_exempt_from_weighing boolean default false not null
  weighed_at timestamp with time zone
  version integer default 1 not null
  constraint bag_pkey PRIMARY KEY (storehouse_id, bag_id)
  constraint bag_code_once UNIQUE (storehouse_id, bag_code)
  constraint bag_number_once UNIQUE (storehouse_id, buy_line_id, bag_no)
  constraint bag_of_its_buy UNIQUE (storehouse_id, buy_id, bag_id)
  constraint bag_delivery_fk FOREIGN KEY (storehouse_id, buy_id, delivery_id) REFERENCES book.delivery(storehouse_id, buy_id, delivery_id)
  constraint bag_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint bag_lot_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.lot(storehouse_id, lot_id)
  constraint bag_offer_fk FOREIGN KEY (storehouse_id, bag_offer_id) REFERENCES book.bag_offer(storehouse_id, bag_offer_id)
  constraint bag_vessel_fk FOREIGN KEY (storehouse_id, bag_id, vessel_kind) REFERENCES book.vessel(storehouse_id, vessel_id, kind)
  constraint bag_condition_known CHECK ((condition = ANY (ARRAY['dry'::text, 'torn'::text, 'wet'::text, 'infested'::text, 'odour'::text, 'wrong'::text])))
  constraint bag_decision_known CHECK ((decision = ANY (ARRAY['accepted'::text, 'accepted-with-note'::text, 'refused'::text])))
  constraint bag_is_a_vessel CHECK ((vessel_kind = 'bag'::text))
  constraint bag_moisture_in_range CHECK (((moisture_tenths_percent >= 0) AND (moisture_tenths_percent <= 1000)))
  constraint bag_net_possible CHECK (((net_grams)::bigint <= (2 * (declared_grams)::bigint)))
  constraint bag_weighed_whole CHECK ((((gross_grams IS NULL) = (tare_grams IS NULL)) AND ((gross_grams)::bigint >= (tare_grams)::bigint)))
  CREATE INDEX bag_by_buy ON book.bag USING btree (storehouse_id, buy_id)
  CREATE INDEX bag_by_lot ON book.bag USING btree (storehouse_id, lot_id)
  CREATE TRIGGER bag_joins_holds AFTER INSERT ON book.bag FOR EACH STATEMENT EXECUTE FUNCTION book.extend_holds()
  CREATE CONSTRAINT TRIGGER bag_joins_holds_at_last AFTER INSERT ON book.bag DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION book.extend_holds_at_last()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (condition, decision, gross_grams, is_exempt_from_weighing, moisture_tenths_percent, net_grams, note, tare_grams, version, weighed_at) to sheafbook_app

table book.bag_offer row level security
  storehouse_id uuid not null
  bag_offer_id uuid default uuidv7() not null
  quote_id uuid not null
  buy_id uuid not null
  buy_line_id uuid not null
  bag_size integer not null
  bag_grams book.amount not null
  bag_label text not null
  break_kind text default 'all-units'::text not null
  most_bags integer
  constraint bag_offer_pkey PRIMARY KEY (storehouse_id, bag_offer_id)
  constraint bag_offer_size_once UNIQUE (storehouse_id, quote_id, buy_line_id, bag_size)
  constraint bag_offer_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint bag_offer_quote_fk FOREIGN KEY (storehouse_id, buy_id, quote_id) REFERENCES book.quote(storehouse_id, buy_id, quote_id)
  constraint bag_offer_break_kind_known CHECK ((break_kind = ANY (ARRAY['all-units'::text, 'incremental'::text])))
  constraint bag_offer_most_positive CHECK ((most_bags > 0))
  constraint bag_offer_size_in_range CHECK ((((bag_size >= 1) AND (bag_size <= 5000)) AND ((bag_grams)::bigint > 0)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.bank_balance row level security
  storehouse_id uuid not null
  bank_balance_id uuid default uuidv7() not null
  on_day date not null
  minor_units bigint not null
  bank_file_id uuid
  said_by uuid not null
  said_at timestamp with time zone not null
  constraint bank_balance_pkey PRIMARY KEY (storehouse_id, bank_balance_id)
  constraint bank_balance_file_fk FOREIGN KEY (storehouse_id, bank_file_id) REFERENCES book.bank_file(storehouse_id, bank_file_id)
  constraint bank_balance_said_by_fk FOREIGN KEY (storehouse_id, said_by) REFERENCES book.person(storehouse_id, person_id)
  constraint bank_balance_exact_in_a_double CHECK ((abs(minor_units) <= '9007199254740991'::bigint))
  CREATE INDEX bank_balance_by_day ON book.bank_balance USING btree (storehouse_id, on_day, said_at)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.bank_file row level security
  storehouse_id uuid not null
  bank_file_id uuid not null
  name text not null
  headings text not null
  columns jsonb not null
  taken_by uuid not null
  taken_at timestamp with time zone not null
  constraint bank_file_pkey PRIMARY KEY (storehouse_id, bank_file_id)
  constraint bank_file_taken_by_fk FOREIGN KEY (storehouse_id, taken_by) REFERENCES book.person(storehouse_id, person_id)
  constraint bank_file_named CHECK (((name ~ '\S'::text) AND (length(name) <= 200)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.bank_line row level security
  storehouse_id uuid not null
  bank_line_id uuid default uuidv7() not null
  bank_file_id uuid not null
  row_no integer not null
  on_day date not null
  minor_units bigint not null
  words text not null
  fingerprint text not null
  occurrence integer not null
  constraint bank_line_pkey PRIMARY KEY (storehouse_id, bank_line_id)
  constraint bank_line_once UNIQUE (storehouse_id, fingerprint, occurrence)
  constraint bank_line_file_fk FOREIGN KEY (storehouse_id, bank_file_id) REFERENCES book.bank_file(storehouse_id, bank_file_id)
  constraint bank_line_amount_moves CHECK (((minor_units <> 0) AND (abs(minor_units) <= '9007199254740991'::bigint)))
  constraint bank_line_counted_from_one CHECK (((occurrence >= 1) AND (row_no >= 1)))
  constraint bank_line_words_fit CHECK (((length(words) <= 500) AND (length(fingerprint) <= 600)))
  CREATE INDEX bank_line_by_day ON book.bank_line USING btree (storehouse_id, on_day, bank_line_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.bank_match row level security
  storehouse_id uuid not null
  bank_match_id uuid default uuidv7() not null
  bank_line_id uuid not null
  how text not null
  entry_id uuid
  reason text default ''::text not null
  matched_by uuid not null
  matched_at timestamp with time zone not null
  undone_by uuid
  undone_at timestamp with time zone
  undone_because text
  constraint bank_match_pkey PRIMARY KEY (storehouse_id, bank_match_id)
  constraint bank_match_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint bank_match_line_fk FOREIGN KEY (storehouse_id, bank_line_id) REFERENCES book.bank_line(storehouse_id, bank_line_id)
  constraint bank_match_matched_by_fk FOREIGN KEY (storehouse_id, matched_by) REFERENCES book.person(storehouse_id, person_id)
  constraint bank_match_undone_by_fk FOREIGN KEY (storehouse_id, undone_by) REFERENCES book.person(storehouse_id, person_id)
  constraint bank_match_entry_fits_how CHECK (((how = 'set-aside'::text) = (entry_id IS NULL)))
  constraint bank_match_how_known CHECK ((how = ANY (ARRAY['in-book'::text, 'posted'::text, 'set-aside'::text])))
  constraint bank_match_set_aside_explained CHECK (((how <> 'set-aside'::text) OR (reason ~ '\S'::text)))
  constraint bank_match_undone_whole CHECK ((((undone_by IS NULL) = (undone_at IS NULL)) AND ((undone_at IS NULL) = (undone_because IS NULL)) AND ((undone_because IS NULL) OR (undone_because ~ '\S'::text))))
  CREATE INDEX bank_match_by_entry ON book.bank_match USING btree (storehouse_id, entry_id) WHERE (entry_id IS NOT NULL)
  CREATE INDEX bank_match_by_line ON book.bank_match USING btree (storehouse_id, bank_line_id)
  CREATE UNIQUE INDEX bank_match_entry_once ON book.bank_match USING btree (storehouse_id, entry_id) WHERE (undone_at IS NULL)
  CREATE UNIQUE INDEX bank_match_line_once ON book.bank_match USING btree (storehouse_id, bank_line_id) WHERE (undone_at IS NULL)
  CREATE CONSTRAINT TRIGGER bank_match_fits AFTER INSERT ON book.bank_match DEFERRABLE INITIALLY IMMEDIATE FOR EACH ROW WHEN ((new.entry_id IS NOT NULL)) EXECUTE FUNCTION book.bank_match_fits()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (undone_at, undone_because, undone_by) to sheafbook_app
  grant select to sheafbook_poster

table book.book_state row level security
  storehouse_id uuid not null
  last_entry_no bigint default 0 not null
  closed_through date
  constraint book_state_pkey PRIMARY KEY (storehouse_id)
  constraint book_state_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert (storehouse_id), select to sheafbook_app
  grant select, update (closed_through, last_entry_no) to sheafbook_poster

table book.booking row level security
  storehouse_id uuid not null
  booking_id uuid default uuidv7() not null
  equipment_item_id uuid not null
  equipment_unit_id uuid not null
  purpose text not null
  household_id uuid
  session_id uuid
  starts_at timestamp with time zone not null
  ends_at timestamp with time zone not null
  blocked_from timestamp with time zone not null
  blocked_to timestamp with time zone not null
  state text default 'booked'::text not null
  offered_until timestamp with time zone
  relay_from_id uuid
  relay_agreed_at timestamp with time zone
  uses integer
  note text default ''::text not null
  booked_by uuid not null
  booked_at timestamp with time zone not null
  version integer default 1 not null
  constraint booking_pkey PRIMARY KEY (storehouse_id, booking_id)
  constraint booking_booked_by_fk FOREIGN KEY (storehouse_id, booked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint booking_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint booking_relay_from_fk FOREIGN KEY (storehouse_id, relay_from_id) REFERENCES book.booking(storehouse_id, booking_id) DEFERRABLE
  constraint booking_session_fk FOREIGN KEY (storehouse_id, session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint booking_unit_fk FOREIGN KEY (storehouse_id, equipment_item_id, equipment_unit_id) REFERENCES book.equipment_unit(storehouse_id, equipment_item_id, equipment_unit_id)
  constraint booking_in_order CHECK (((starts_at < ends_at) AND (blocked_from <= starts_at) AND (ends_at <= blocked_to)))
  constraint booking_is_for_someone CHECK ((((purpose = 'loan'::text) = (household_id IS NOT NULL)) AND ((purpose = 'session'::text) = (session_id IS NOT NULL))))
  constraint booking_offer_ends CHECK (((state = 'offered'::text) = (offered_until IS NOT NULL)))
  constraint booking_purpose_known CHECK ((purpose = ANY (ARRAY['loan'::text, 'session'::text, 'service'::text])))
  constraint booking_relay_whole CHECK (((relay_agreed_at IS NULL) OR (relay_from_id IS NOT NULL)))
  constraint booking_state_known CHECK ((state = ANY (ARRAY['asked'::text, 'offered'::text, 'booked'::text, 'out'::text, 'returned'::text, 'cancelled'::text, 'not-fetched'::text])))
  constraint booking_uses_counted CHECK ((uses >= 0))
  constraint booking_one_at_a_time EXCLUDE USING gist (storehouse_id WITH =, equipment_unit_id WITH =, tstzrange(blocked_from, blocked_to, '[)'::text) WITH &&) WHERE ((state = ANY (ARRAY['offered'::text, 'booked'::text, 'out'::text, 'returned'::text])))
  CREATE INDEX booking_by_household ON book.booking USING btree (storehouse_id, household_id, starts_at)
  CREATE INDEX booking_by_session ON book.booking USING btree (storehouse_id, session_id)
  CREATE INDEX booking_by_unit ON book.booking USING btree (storehouse_id, equipment_unit_id, blocked_from)
  CREATE UNIQUE INDEX booking_handed_on_once ON book.booking USING btree (storehouse_id, relay_from_id) WHERE ((relay_agreed_at IS NOT NULL) AND (state = ANY (ARRAY['booked'::text, 'out'::text, 'returned'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (blocked_from, blocked_to, ends_at, equipment_unit_id, offered_until, relay_agreed_at, relay_from_id, starts_at, state, uses, version) to sheafbook_app

table book.booking_food row level security
  storehouse_id uuid not null
  booking_id uuid not null
  food_id uuid not null
  constraint booking_food_pkey PRIMARY KEY (storehouse_id, booking_id, food_id)
  constraint booking_food_booking_fk FOREIGN KEY (storehouse_id, booking_id) REFERENCES book.booking(storehouse_id, booking_id)
  constraint booking_food_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.buy row level security
  storehouse_id uuid not null
  buy_id uuid default uuidv7() not null
  name text not null
  stage text default 'planning'::text not null
  gathering_closes_at timestamp with time zone not null
  order_on date not null
  landing_on date
  landing_place text default ''::text not null
  rules_version integer
  fill_id uuid
  made_by uuid not null
  made_at timestamp with time zone not null
  version integer default 1 not null
  constraint buy_pkey PRIMARY KEY (storehouse_id, buy_id)
  constraint buy_name_once UNIQUE (storehouse_id, name)
  constraint buy_fill_fk FOREIGN KEY (storehouse_id, buy_id, fill_id) REFERENCES book.fill(storehouse_id, buy_id, fill_id) DEFERRABLE
  constraint buy_made_by_fk FOREIGN KEY (storehouse_id, made_by) REFERENCES book.person(storehouse_id, person_id)
  constraint buy_rules_fk FOREIGN KEY (storehouse_id, rules_version) REFERENCES book.rules(storehouse_id, rules_version)
  constraint buy_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint buy_fixed_has_rules CHECK (((stage = ANY (ARRAY['planning'::text, 'gathering'::text, 'called-off'::text])) OR ((rules_version IS NOT NULL) AND (fill_id IS NOT NULL))))
  constraint buy_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  constraint buy_stage_known CHECK ((stage = ANY (ARRAY['planning'::text, 'gathering'::text, 'fixed'::text, 'ordered'::text, 'landed'::text, 'shared-out'::text, 'closed'::text, 'called-off'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (fill_id, gathering_closes_at, landing_on, landing_place, name, order_on, rules_version, stage, version) to sheafbook_app

table book.buy_line row level security
  storehouse_id uuid not null
  buy_line_id uuid default uuidv7() not null
  buy_id uuid not null
  food_id uuid not null
  "position" integer not null
  mass_unit text default 'lb'::text not null
  step_units integer default 5 not null
  split_rule text
  common_cap_grams book.amount
  quote_id uuid
  version integer default 1 not null
  constraint buy_line_pkey PRIMARY KEY (storehouse_id, buy_line_id)
  constraint buy_line_food_once UNIQUE (storehouse_id, buy_id, food_id)
  constraint buy_line_of_buy UNIQUE (storehouse_id, buy_id, buy_line_id)
  constraint buy_line_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint buy_line_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  constraint buy_line_quote_fk FOREIGN KEY (storehouse_id, buy_id, quote_id) REFERENCES book.quote(storehouse_id, buy_id, quote_id)
  constraint buy_line_split_rule_known CHECK ((split_rule = ANY (ARRAY['proportional'::text, 'equal-awards'::text, 'equal-losses'::text, 'first-come'::text, 'need-first'::text, 'rotation-of-loss'::text])))
  constraint buy_line_step_positive CHECK (((step_units >= 1) AND (step_units <= 1000)))
  constraint buy_line_unit_known CHECK ((mass_unit = ANY (ARRAY['lb'::text, 'kg'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (common_cap_grams, quote_id, split_rule, step_units, version) to sheafbook_app

table book.calendar_event row level security
  storehouse_id uuid not null
  event_key text not null
  household_id uuid
  content jsonb not null
  sequence integer default 0 not null
  modified_at timestamp with time zone not null
  constraint calendar_event_pkey PRIMARY KEY (storehouse_id, event_key)
  constraint calendar_event_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint calendar_event_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  CREATE INDEX calendar_event_by_household ON book.calendar_event USING btree (storehouse_id, household_id)
  policy calendar_event_private restrictive for all to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = 'leaving'::text))) with check (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (content, modified_at, sequence) to sheafbook_app

table book.calendar_feed row level security
  storehouse_id uuid not null
  calendar_feed_id uuid default uuidv7() not null
  person_id uuid not null
  scope text not null
  item_kind text
  item_id uuid
  language text not null
  secret_sha256 text not null
  made_at timestamp with time zone not null
  renewed_at timestamp with time zone
  ended_at timestamp with time zone
  constraint calendar_feed_pkey PRIMARY KEY (storehouse_id, calendar_feed_id)
  constraint calendar_feed_secret_once UNIQUE (storehouse_id, secret_sha256)
  constraint calendar_feed_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint calendar_feed_item_whole CHECK ((((scope = 'item'::text) = (item_kind IS NOT NULL)) AND ((item_kind IS NULL) = (item_id IS NULL))))
  constraint calendar_feed_language_known CHECK ((language = ANY (ARRAY['en'::text, 'es'::text])))
  constraint calendar_feed_scope_known CHECK ((scope = ANY (ARRAY['mine'::text, 'storehouse'::text, 'item'::text])))
  constraint calendar_feed_secret_is_sha256 CHECK ((secret_sha256 ~ '^[0-9a-f]{64}$'::text))
  CREATE INDEX calendar_feed_by_person ON book.calendar_feed USING btree (storehouse_id, person_id)
  CREATE INDEX calendar_feed_by_secret ON book.calendar_feed USING btree (secret_sha256)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (ended_at, renewed_at, secret_sha256) to sheafbook_app

table book.cash_count row level security
  storehouse_id uuid not null
  cash_count_id uuid not null
  on_day date not null
  expected_minor_units book.amount not null
  counted_minor_units book.amount not null
  pieces jsonb
  reason text default ''::text not null
  entry_id uuid
  counted_by uuid not null
  counted_with uuid
  counted_at timestamp with time zone not null
  constraint cash_count_pkey PRIMARY KEY (storehouse_id, cash_count_id)
  constraint cash_count_entry_once UNIQUE (storehouse_id, entry_id)
  constraint cash_count_counted_by_fk FOREIGN KEY (storehouse_id, counted_by) REFERENCES book.person(storehouse_id, person_id)
  constraint cash_count_counted_with_fk FOREIGN KEY (storehouse_id, counted_with) REFERENCES book.person(storehouse_id, person_id)
  constraint cash_count_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint cash_count_by_two_people CHECK ((counted_with <> counted_by))
  constraint cash_count_difference_explained CHECK ((((expected_minor_units)::bigint = (counted_minor_units)::bigint) OR (reason ~ '\S'::text)))
  constraint cash_count_difference_posted CHECK ((((expected_minor_units)::bigint = (counted_minor_units)::bigint) = (entry_id IS NULL)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.charge_line row level security
  storehouse_id uuid not null
  charge_line_id uuid default uuidv7() not null
  buy_id uuid not null
  cost_line text not null
  buy_line_id uuid
  minor_units bigint not null
  entry_id uuid not null
  constraint charge_line_pkey PRIMARY KEY (storehouse_id, charge_line_id)
  constraint charge_line_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint charge_line_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint charge_line_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint charge_line_exact_in_a_double CHECK (((minor_units >= '-9007199254740991'::bigint) AND (minor_units <= '9007199254740991'::bigint)))
  CREATE INDEX charge_line_by_buy ON book.charge_line USING btree (storehouse_id, buy_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.charge_share row level security
  storehouse_id uuid not null
  charge_line_id uuid not null
  owner_id uuid not null
  minor_units bigint not null
  weight numeric(40,0) not null
  got_spare_unit boolean not null
  constraint charge_share_pkey PRIMARY KEY (storehouse_id, charge_line_id, owner_id)
  constraint charge_share_line_fk FOREIGN KEY (storehouse_id, charge_line_id) REFERENCES book.charge_line(storehouse_id, charge_line_id)
  constraint charge_share_owner_fk FOREIGN KEY (storehouse_id, owner_id) REFERENCES book.owner(storehouse_id, owner_id)
  constraint charge_share_exact_in_a_double CHECK (((minor_units >= '-9007199254740991'::bigint) AND (minor_units <= '9007199254740991'::bigint)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.claim row level security
  storehouse_id uuid not null
  claim_id uuid default uuidv7() not null
  buy_id uuid not null
  supplier_id uuid not null
  buy_line_id uuid
  kind text not null
  minor_units book.amount not null
  because text not null
  state text default 'open'::text not null
  raised_on date not null
  raised_by uuid not null
  settled_on date
  credited_minor_units book.amount default 0 not null
  version integer default 1 not null
  constraint claim_pkey PRIMARY KEY (storehouse_id, claim_id)
  constraint claim_of_its_buy UNIQUE (storehouse_id, buy_id, claim_id)
  constraint claim_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint claim_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint claim_raised_by_fk FOREIGN KEY (storehouse_id, raised_by) REFERENCES book.person(storehouse_id, person_id)
  constraint claim_supplier_fk FOREIGN KEY (storehouse_id, supplier_id) REFERENCES book.supplier(storehouse_id, supplier_id)
  constraint claim_asks_something CHECK ((((minor_units)::bigint > 0) AND ((credited_minor_units)::bigint <= (minor_units)::bigint)))
  constraint claim_kind_known CHECK ((kind = ANY (ARRAY['short'::text, 'damage'::text, 'wrong'::text, 'freight'::text, 'goodwill'::text])))
  constraint claim_state_known CHECK ((state = ANY (ARRAY['open'::text, 'credited'::text, 'refused'::text])))
  CREATE INDEX claim_by_buy ON book.claim USING btree (storehouse_id, buy_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (credited_minor_units, settled_on, state, version) to sheafbook_app

table book.code_counter row level security
  storehouse_id uuid not null
  counter text not null
  last_number bigint default 0 not null
  constraint code_counter_pkey PRIMARY KEY (storehouse_id, counter)
  constraint code_counter_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint code_counter_known CHECK ((counter = ANY (ARRAY['bag'::text, 'container'::text, 'equipment'::text, 'order'::text, 'paper'::text, 'seat'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (last_number) to sheafbook_app

table book.container row level security
  storehouse_id uuid not null
  container_id uuid not null
  vessel_kind text default 'container'::text not null
  container_code text not null
  container_kind_id uuid not null
  lot_id uuid not null
  household_id uuid
  packed_on date not null
  opened_on date
  note text default ''::text not null
  treatment text
  moisture_tenths integer
  constraint container_pkey PRIMARY KEY (storehouse_id, container_id)
  constraint container_code_once UNIQUE (storehouse_id, container_code)
  constraint container_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint container_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint container_lot_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.lot(storehouse_id, lot_id)
  constraint container_vessel_fk FOREIGN KEY (storehouse_id, container_id, vessel_kind) REFERENCES book.vessel(storehouse_id, vessel_id, kind)
  constraint container_is_a_vessel CHECK ((vessel_kind = 'container'::text))
  constraint container_moisture_in_range CHECK (((moisture_tenths >= 0) AND (moisture_tenths <= 1000)))
  constraint container_treatment_known CHECK ((treatment = ANY (ARRAY['oxygen-absorber'::text, 'dry-ice'::text, 'vacuum'::text, 'nitrogen-flush'::text, 'freeze-thaw-freeze'::text, 'food-grade-earth'::text, 'none'::text])))
  CREATE INDEX container_by_household ON book.container USING btree (storehouse_id, household_id)
  CREATE INDEX container_by_lot ON book.container USING btree (storehouse_id, lot_id)
  CREATE INDEX container_by_packing ON book.container USING btree (storehouse_id, packed_on) WHERE (opened_on IS NULL)
  CREATE TRIGGER container_joins_holds AFTER INSERT ON book.container FOR EACH STATEMENT EXECUTE FUNCTION book.extend_holds()
  CREATE CONSTRAINT TRIGGER container_joins_holds_at_last AFTER INSERT ON book.container DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION book.extend_holds_at_last()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (household_id, moisture_tenths, note, opened_on, packed_on, treatment) to sheafbook_app
  grant select to sheafbook_poster

table book.container_kind row level security
  storehouse_id uuid not null
  container_kind_id uuid default uuidv7() not null
  kind_code text not null
  name_en text not null
  name_es text not null
  is_own boolean not null
  capacity_microlitres bigint not null
  tare_grams integer
  price_minor_units book.amount
  source text not null
  version integer default 1 not null
  barrier text
  is_dark boolean default false not null
  is_breakable boolean default false not null
  is_rodent_proof boolean default false not null
  needs_outer boolean default false not null
  is_reusable boolean default false not null
  most_stacked integer
  traits_source text default ''::text not null
  constraint container_kind_pkey PRIMARY KEY (storehouse_id, container_kind_id)
  constraint container_kind_code_once UNIQUE (storehouse_id, kind_code)
  constraint container_kind_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint container_kind_barrier_known CHECK ((barrier = ANY (ARRAY['metal'::text, 'foil'::text, 'glass'::text, 'pet'::text, 'bare-plastic'::text, 'open'::text])))
  constraint container_kind_holds_something CHECK (((capacity_microlitres >= 1000) AND (capacity_microlitres <= 1000000000)))
  constraint container_kind_stack_in_range CHECK (((most_stacked >= 1) AND (most_stacked <= 100)))
  constraint container_kind_tare_in_range CHECK (((tare_grams >= 0) AND (tare_grams <= 100000)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (barrier, is_breakable, is_dark, is_reusable, is_rodent_proof, most_stacked, needs_outer, price_minor_units, tare_grams, traits_source, version) to sheafbook_app

table book.container_move row level security
  storehouse_id uuid not null
  container_move_id uuid default uuidv7() not null
  container_id uuid not null
  moved_on date not null
  place_id uuid
  told_tenths integer
  moved_by uuid not null
  moved_at timestamp with time zone not null
  constraint container_move_pkey PRIMARY KEY (storehouse_id, container_move_id)
  constraint container_move_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint container_move_moved_by_fk FOREIGN KEY (storehouse_id, moved_by) REFERENCES book.person(storehouse_id, person_id)
  constraint container_move_place_fk FOREIGN KEY (storehouse_id, place_id) REFERENCES book.place(storehouse_id, place_id) ON DELETE SET NULL (place_id)
  constraint container_move_happened CHECK ((moved_on <= (((moved_at AT TIME ZONE 'UTC'::text))::date + 1)))
  constraint container_move_told_of_no_place CHECK (((told_tenths IS NULL) OR (place_id IS NULL)))
  constraint container_move_told_possible CHECK (((told_tenths >= '-600'::integer) AND (told_tenths <= 700)))
  CREATE INDEX container_move_by_container ON book.container_move USING btree (storehouse_id, container_id, moved_on)
  CREATE INDEX container_move_by_place ON book.container_move USING btree (storehouse_id, place_id) WHERE (place_id IS NOT NULL)
  CREATE CONSTRAINT TRIGGER container_move_fits AFTER INSERT ON book.container_move DEFERRABLE INITIALLY IMMEDIATE FOR EACH ROW EXECUTE FUNCTION book.container_move_fits()
  CREATE TRIGGER container_move_fits_load AFTER INSERT ON book.container_move REFERENCING NEW TABLE AS moved FOR EACH STATEMENT EXECUTE FUNCTION book.refuse_overload()
  CREATE TRIGGER container_move_joins_holds AFTER INSERT ON book.container_move FOR EACH STATEMENT EXECUTE FUNCTION book.extend_holds()
  CREATE CONSTRAINT TRIGGER container_move_joins_holds_at_last AFTER INSERT ON book.container_move DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION book.extend_holds_at_last()
  policy container_move_private restrictive for all to public using (((storehouse_id, container_id) IN ( SELECT c.storehouse_id,
    c.container_id
   FROM book.container c
  WHERE ((c.household_id IS NULL) OR (c.household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['coverage-totals'::text, 'need-first'::text, 'hold'::text, 'place-load'::text, 'lids'::text]))))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app
  grant select to sheafbook_poster

view book.container_place with (security_invoker=true)
  storehouse_id uuid
  container_id uuid
  place_id uuid
  grant select to sheafbook_app
  grant select to sheafbook_poster
  as
 SELECT storehouse_id,
    container_id,
    place_id
   FROM book.container_move m
  WHERE NOT (EXISTS ( SELECT
           FROM book.container_move l
          WHERE l.storehouse_id = m.storehouse_id AND l.container_id = m.container_id AND ((ROW(l.moved_on, l.moved_at, l.container_move_id) > ROW(m.moved_on, m.moved_at, m.container_move_id)))));

table book.container_tare row level security
  storehouse_id uuid not null
  container_tare_id uuid default uuidv7() not null
  container_kind_id uuid not null
  readings integer[] not null
  weighed_by uuid not null
  weighed_at timestamp with time zone not null
  recorded_at timestamp with time zone not null
  constraint container_tare_pkey PRIMARY KEY (storehouse_id, container_tare_id)
  constraint container_tare_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint container_tare_weighed_by_fk FOREIGN KEY (storehouse_id, weighed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint container_tare_has_happened CHECK ((weighed_at <= (recorded_at + '00:05:00'::interval)))
  constraint container_tare_of_ten CHECK (((array_ndims(readings) = 1) AND (cardinality(readings) = 10) AND (array_position(readings, NULL::integer) IS NULL)))
  constraint container_tare_weighs_something CHECK (((1 <= ALL (readings)) AND (100000 >= ALL (readings))))
  CREATE INDEX container_tare_by_kind ON book.container_tare USING btree (storehouse_id, container_kind_id, weighed_at)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.container_wish row level security
  storehouse_id uuid not null
  container_wish_id uuid default uuidv7() not null
  buy_id uuid not null
  buy_line_id uuid not null
  household_id uuid not null
  "position" integer not null
  container_kind_id uuid not null
  grams book.amount
  entered_by uuid not null
  constraint container_wish_pkey PRIMARY KEY (storehouse_id, container_wish_id)
  constraint container_wish_place_once UNIQUE (storehouse_id, buy_line_id, household_id, "position")
  constraint container_wish_entered_by_fk FOREIGN KEY (storehouse_id, entered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint container_wish_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint container_wish_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint container_wish_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.delivery row level security
  storehouse_id uuid not null
  delivery_id uuid default uuidv7() not null
  buy_id uuid not null
  supplier_id uuid not null
  part_no integer not null
  carrier text default ''::text not null
  arrived_on date not null
  carrier_note text default ''::text not null
  counted_by text default ''::text not null
  entered_by uuid not null
  entered_at timestamp with time zone not null
  finished_at timestamp with time zone
  version integer default 1 not null
  constraint delivery_pkey PRIMARY KEY (storehouse_id, delivery_id)
  constraint delivery_of_buy UNIQUE (storehouse_id, buy_id, delivery_id)
  constraint delivery_part_once UNIQUE (storehouse_id, buy_id, part_no)
  constraint delivery_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint delivery_entered_by_fk FOREIGN KEY (storehouse_id, entered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint delivery_supplier_fk FOREIGN KEY (storehouse_id, supplier_id) REFERENCES book.supplier(storehouse_id, supplier_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (carrier, carrier_note, counted_by, finished_at, version) to sheafbook_app

table book.delivery_count row level security
  storehouse_id uuid not null
  delivery_id uuid not null
  bag_offer_id uuid not null
  counted_bags integer not null
  note text default ''::text not null
  constraint delivery_count_pkey PRIMARY KEY (storehouse_id, delivery_id, bag_offer_id)
  constraint delivery_count_delivery_fk FOREIGN KEY (storehouse_id, delivery_id) REFERENCES book.delivery(storehouse_id, delivery_id)
  constraint delivery_count_offer_fk FOREIGN KEY (storehouse_id, bag_offer_id) REFERENCES book.bag_offer(storehouse_id, bag_offer_id)
  constraint delivery_count_in_range CHECK (((counted_bags >= 0) AND (counted_bags <= 100000)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (counted_bags, note) to sheafbook_app

table book.deposit_ask row level security
  storehouse_id uuid not null
  buy_id uuid not null
  household_id uuid not null
  estimate_minor_units book.amount not null
  asked_minor_units book.amount not null
  due_on date not null
  waived_by uuid
  waiver_reason text default ''::text not null
  constraint deposit_ask_pkey PRIMARY KEY (storehouse_id, buy_id, household_id)
  constraint deposit_ask_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint deposit_ask_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint deposit_ask_waived_by_fk FOREIGN KEY (storehouse_id, waived_by) REFERENCES book.person(storehouse_id, person_id)
  constraint deposit_ask_waiver_explained CHECK (((waived_by IS NULL) OR (waiver_reason ~ '\S'::text)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (asked_minor_units, due_on, estimate_minor_units, waived_by, waiver_reason) to sheafbook_app

table book.donor_reading row level security
  storehouse_id uuid not null
  donor_reading_id uuid default uuidv7() not null
  lot_id uuid not null
  purpose text not null
  read_by uuid not null
  read_at timestamp with time zone not null
  constraint donor_reading_pkey PRIMARY KEY (storehouse_id, donor_reading_id)
  constraint donor_reading_intake_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.intake(storehouse_id, lot_id)
  constraint donor_reading_read_by_fk FOREIGN KEY (storehouse_id, read_by) REFERENCES book.person(storehouse_id, person_id)
  constraint donor_reading_has_its_purpose CHECK ((purpose ~ '\S'::text))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.duty_grant row level security
  storehouse_id uuid not null
  duty_grant_id uuid default uuidv7() not null
  person_id uuid not null
  duty text not null
  granted_by uuid
  granted_at timestamp with time zone not null
  ended_at timestamp with time zone
  ends_on date
  constraint duty_grant_pkey PRIMARY KEY (storehouse_id, duty_grant_id)
  constraint duty_grant_granted_by_fk FOREIGN KEY (storehouse_id, granted_by) REFERENCES book.person(storehouse_id, person_id)
  constraint duty_grant_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint duty_grant_duty_known CHECK ((duty = ANY (ARRAY['coordinator'::text, 'treasurer'::text, 'packing_lead'::text, 'equipment_keeper'::text, 'reviewer'::text])))
  CREATE UNIQUE INDEX duty_grant_held_once ON book.duty_grant USING btree (storehouse_id, person_id, duty) WHERE (ended_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (ended_at, ends_on) to sheafbook_app

table book.eater row level security
  storehouse_id uuid not null
  eater_id uuid default uuidv7() not null
  household_id uuid not null
  name text not null
  birth_on text not null
  sex text default 'unstated'::text not null
  activity text default 'moderate'::text not null
  present_percent integer default 100 not null
  height_centimetres integer
  mass_kilograms integer
  typed_kilocalories integer
  excluded_allergens text[] default '{}'::text[] not null
  excluded_food_codes text[] default '{}'::text[] not null
  avoids_gluten boolean default false not null
  version integer default 1 not null
  constraint eater_pkey PRIMARY KEY (storehouse_id, eater_id)
  constraint eater_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint eater_activity_known CHECK ((activity = ANY (ARRAY['sedentary'::text, 'moderate'::text, 'active'::text])))
  constraint eater_birth_shape CHECK ((birth_on ~ '^\d{4}(-\d{2}(-\d{2})?)?$'::text))
  constraint eater_measures_in_range CHECK ((((height_centimetres >= 30) AND (height_centimetres <= 250)) AND ((mass_kilograms >= 1) AND (mass_kilograms <= 400)) AND ((typed_kilocalories >= 0) AND (typed_kilocalories <= 10000))))
  constraint eater_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  constraint eater_present_in_range CHECK (((present_percent >= 0) AND (present_percent <= 100)))
  constraint eater_sex_known CHECK ((sex = ANY (ARRAY['female'::text, 'male'::text, 'unstated'::text])))
  CREATE INDEX eater_by_household ON book.eater USING btree (storehouse_id, household_id)
  CREATE TRIGGER household_still_here BEFORE INSERT ON book.eater FOR EACH ROW EXECUTE FUNCTION book.refuse_left_household()
  policy eater_private restrictive for all to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['coverage-totals'::text, 'need-first'::text, 'leaving'::text, 'import'::text, 'packing'::text])))) with check (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = 'import'::text)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update to sheafbook_app

table book.entry row level security
  storehouse_id uuid not null
  entry_id uuid default uuidv7() not null
  entry_no bigint not null
  what text not null
  on_day date not null
  recorded_at timestamp with time zone not null
  person_id uuid not null
  entered_for uuid
  buy_id uuid
  subject_id uuid
  reverses_id uuid
  note text default ''::text not null
  constraint entry_pkey PRIMARY KEY (storehouse_id, entry_id)
  constraint entry_no_once UNIQUE (storehouse_id, entry_no)
  constraint entry_reversed_once UNIQUE (storehouse_id, reverses_id)
  constraint entry_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint entry_entered_for_fk FOREIGN KEY (storehouse_id, entered_for) REFERENCES book.household(storehouse_id, household_id)
  constraint entry_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint entry_reverses_fk FOREIGN KEY (storehouse_id, reverses_id) REFERENCES book.entry(storehouse_id, entry_id) DEFERRABLE
  constraint entry_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint entry_named CHECK ((what ~ '^[a-z][a-z-]*$'::text))
  CREATE INDEX entry_by_buy ON book.entry USING btree (storehouse_id, buy_id, entry_no) WHERE (buy_id IS NOT NULL)
  CREATE INDEX entry_by_subject ON book.entry USING btree (storehouse_id, subject_id) WHERE (subject_id IS NOT NULL)
  CREATE TRIGGER entry_not_at_the_bank BEFORE INSERT ON book.entry FOR EACH ROW WHEN ((new.reverses_id IS NOT NULL)) EXECUTE FUNCTION book.refuse_reversal_of_matched()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant select to sheafbook_app
  grant insert, select to sheafbook_poster

table book.equipment_item row level security
  storehouse_id uuid not null
  equipment_item_id uuid default uuidv7() not null
  owner_id uuid not null
  name text not null
  kind_note text default ''::text not null
  parts_list text default ''::text not null
  value_minor_units book.amount
  kept_where text default ''::text not null
  entered_by uuid not null
  entered_at timestamp with time zone not null
  version integer default 1 not null
  cautions text default ''::text not null
  deposit_minor_units book.amount default 0 not null
  fee_minor_units book.amount default 0 not null
  late_fee_minor_units book.amount default 0 not null
  damage_note text default ''::text not null
  pre_minutes integer default 0 not null
  post_minutes integer default 0 not null
  longest_days integer default 3 not null
  may_relay boolean default false not null
  service_every_uses integer
  service_every_days integer
  touches_food boolean default false not null
  is_scale boolean default false not null
  is_thermometer boolean default false not null
  constraint equipment_item_pkey PRIMARY KEY (storehouse_id, equipment_item_id)
  constraint equipment_item_is_scale UNIQUE (storehouse_id, equipment_item_id, is_scale)
  constraint equipment_item_is_thermometer UNIQUE (storehouse_id, equipment_item_id, is_thermometer)
  constraint equipment_item_name_once UNIQUE (storehouse_id, name)
  constraint equipment_item_entered_by_fk FOREIGN KEY (storehouse_id, entered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint equipment_item_owner_fk FOREIGN KEY (storehouse_id, owner_id) REFERENCES book.owner(storehouse_id, owner_id)
  constraint equipment_item_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint equipment_item_buffers_in_range CHECK ((((pre_minutes >= 0) AND (pre_minutes <= 20160)) AND ((post_minutes >= 0) AND (post_minutes <= 20160))))
  constraint equipment_item_longest_in_range CHECK (((longest_days >= 1) AND (longest_days <= 90)))
  constraint equipment_item_measures_one_thing CHECK ((NOT (is_scale AND is_thermometer)))
  constraint equipment_item_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  constraint equipment_item_service_positive CHECK (((service_every_uses > 0) AND (service_every_days > 0)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (cautions, damage_note, deposit_minor_units, fee_minor_units, is_scale, is_thermometer, kept_where, kind_note, late_fee_minor_units, longest_days, may_relay, name, post_minutes, pre_minutes, service_every_days, service_every_uses, touches_food, value_minor_units, version) to sheafbook_app

table book.equipment_part row level security
  storehouse_id uuid not null
  equipment_part_id uuid default uuidv7() not null
  equipment_item_id uuid not null
  "position" integer not null
  name text not null
  pieces integer not null
  is_critical boolean not null
  value_minor_units book.amount not null
  dropped_at timestamp with time zone
  constraint equipment_part_pkey PRIMARY KEY (storehouse_id, equipment_part_id)
  constraint equipment_part_of_its_item UNIQUE (storehouse_id, equipment_item_id, equipment_part_id)
  constraint equipment_part_item_fk FOREIGN KEY (storehouse_id, equipment_item_id) REFERENCES book.equipment_item(storehouse_id, equipment_item_id)
  constraint equipment_part_has_pieces CHECK (((pieces >= 1) AND (pieces <= 1000)))
  constraint equipment_part_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  CREATE UNIQUE INDEX equipment_part_name_once ON book.equipment_part USING btree (storehouse_id, equipment_item_id, name) WHERE (dropped_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (dropped_at, is_critical, name, pieces, "position", value_minor_units) to sheafbook_app

table book.equipment_unit row level security
  storehouse_id uuid not null
  equipment_unit_id uuid default uuidv7() not null
  equipment_item_id uuid not null
  unit_no integer not null
  unit_code text not null
  condition text default 'ready'::text not null
  condition_note text default ''::text not null
  in_use_since date not null
  version integer default 1 not null
  constraint equipment_unit_pkey PRIMARY KEY (storehouse_id, equipment_unit_id)
  constraint equipment_unit_code_once UNIQUE (storehouse_id, unit_code)
  constraint equipment_unit_number_once UNIQUE (storehouse_id, equipment_item_id, unit_no)
  constraint equipment_unit_of_its_item UNIQUE (storehouse_id, equipment_item_id, equipment_unit_id)
  constraint equipment_unit_item_fk FOREIGN KEY (storehouse_id, equipment_item_id) REFERENCES book.equipment_item(storehouse_id, equipment_item_id)
  constraint equipment_unit_condition_known CHECK ((condition = ANY (ARRAY['ready'::text, 'dirty'::text, 'broken'::text, 'retired'::text])))
  constraint equipment_unit_counted_from_one CHECK ((unit_no > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (condition, condition_note, version) to sheafbook_app

table book.equipment_wish row level security
  storehouse_id uuid not null
  equipment_wish_id uuid default uuidv7() not null
  equipment_item_id uuid not null
  household_id uuid not null
  starts_at timestamp with time zone not null
  ends_at timestamp with time zone not null
  asked_by uuid not null
  asked_at timestamp with time zone not null
  ended_at timestamp with time zone
  booking_id uuid
  constraint equipment_wish_pkey PRIMARY KEY (storehouse_id, equipment_wish_id)
  constraint equipment_wish_asked_by_fk FOREIGN KEY (storehouse_id, asked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint equipment_wish_booking_fk FOREIGN KEY (storehouse_id, booking_id) REFERENCES book.booking(storehouse_id, booking_id)
  constraint equipment_wish_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint equipment_wish_item_fk FOREIGN KEY (storehouse_id, equipment_item_id) REFERENCES book.equipment_item(storehouse_id, equipment_item_id)
  constraint equipment_wish_in_order CHECK ((starts_at < ends_at))
  CREATE UNIQUE INDEX equipment_wish_open_once ON book.equipment_wish USING btree (storehouse_id, equipment_item_id, household_id) WHERE (ended_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (booking_id, ended_at) to sheafbook_app

table book.equipment_wish_food row level security
  storehouse_id uuid not null
  equipment_wish_id uuid not null
  food_id uuid not null
  constraint equipment_wish_food_pkey PRIMARY KEY (storehouse_id, equipment_wish_id, food_id)
  constraint equipment_wish_food_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  constraint equipment_wish_food_wish_fk FOREIGN KEY (storehouse_id, equipment_wish_id) REFERENCES book.equipment_wish(storehouse_id, equipment_wish_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.fill row level security
  storehouse_id uuid not null
  fill_id uuid default uuidv7() not null
  buy_id uuid not null
  answer jsonb not null
  method_version integer not null
  override_reason text default ''::text not null
  made_by uuid not null
  made_at timestamp with time zone not null
  constraint fill_pkey PRIMARY KEY (storehouse_id, fill_id)
  constraint fill_of_buy UNIQUE (storehouse_id, buy_id, fill_id)
  constraint fill_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint fill_made_by_fk FOREIGN KEY (storehouse_id, made_by) REFERENCES book.person(storehouse_id, person_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.fill_inputs row level security
  storehouse_id uuid not null
  fill_id uuid not null
  inputs jsonb not null
  constraint fill_inputs_pkey PRIMARY KEY (storehouse_id, fill_id)
  constraint fill_inputs_fill_fk FOREIGN KEY (storehouse_id, fill_id) REFERENCES book.fill(storehouse_id, fill_id)
  policy fill_inputs_private restrictive for select to public using ((( SELECT book.current_task() AS current_task) = ANY (ARRAY['fill'::text, 'review'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.fixed_bags row level security
  storehouse_id uuid not null
  buy_id uuid not null
  buy_line_id uuid not null
  bag_offer_id uuid not null
  bags integer not null
  goods_minor_units book.amount not null
  constraint fixed_bags_pkey PRIMARY KEY (storehouse_id, buy_id, buy_line_id, bag_offer_id)
  constraint fixed_bags_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint fixed_bags_offer_fk FOREIGN KEY (storehouse_id, bag_offer_id) REFERENCES book.bag_offer(storehouse_id, bag_offer_id)
  constraint fixed_bags_positive CHECK ((bags > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.food row level security
  storehouse_id uuid not null
  food_id uuid default uuidv7() not null
  food_code text not null
  name_en text not null
  name_es text not null
  food_group text not null
  is_own boolean not null
  kilocalories_per_100_grams integer
  protein_milligrams_per_100_grams integer
  fat_milligrams_per_100_grams integer
  carbohydrate_milligrams_per_100_grams integer
  fibre_milligrams_per_100_grams integer
  bulk_micrograms_per_millilitre integer
  allergens text[] not null
  gluten text not null
  keeping_class text
  needs_moisture_test boolean not null
  source text not null
  source_release text not null
  source_number text not null
  version integer default 1 not null
  retired_at timestamp with time zone
  constraint food_pkey PRIMARY KEY (storehouse_id, food_id)
  constraint food_code_once UNIQUE (storehouse_id, food_code)
  constraint food_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint food_allergens_known CHECK ((allergens <@ ARRAY['milk'::text, 'egg'::text, 'fish'::text, 'crustacean-shellfish'::text, 'tree-nuts'::text, 'peanuts'::text, 'wheat'::text, 'soy'::text, 'sesame'::text]))
  constraint food_code_shape CHECK ((food_code ~ '^[a-z0-9]+(-[a-z0-9]+)*$'::text))
  constraint food_figures_in_range CHECK ((((kilocalories_per_100_grams >= 0) AND (kilocalories_per_100_grams <= 950)) AND ((protein_milligrams_per_100_grams >= 0) AND (protein_milligrams_per_100_grams <= 100000)) AND ((fat_milligrams_per_100_grams >= 0) AND (fat_milligrams_per_100_grams <= 100000)) AND ((carbohydrate_milligrams_per_100_grams >= 0) AND (carbohydrate_milligrams_per_100_grams <= 100000)) AND ((fibre_milligrams_per_100_grams >= 0) AND (fibre_milligrams_per_100_grams <= 100000)) AND ((bulk_micrograms_per_millilitre >= 1000) AND (bulk_micrograms_per_millilitre <= 3000000))))
  constraint food_gluten_known CHECK ((gluten = ANY (ARRAY['yes'::text, 'no'::text, 'cross-contact'::text])))
  constraint food_group_known CHECK ((food_group = ANY (ARRAY['grains'::text, 'legumes'::text, 'dried-milk'::text, 'fats'::text, 'sugars'::text, 'salt'::text, 'other'::text])))
  constraint food_named CHECK (((name_en ~ '\S'::text) AND (name_es ~ '\S'::text)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (allergens, bulk_micrograms_per_millilitre, carbohydrate_milligrams_per_100_grams, fat_milligrams_per_100_grams, fibre_milligrams_per_100_grams, food_code, food_group, gluten, kilocalories_per_100_grams, name_en, name_es, needs_moisture_test, protein_milligrams_per_100_grams, retired_at, source, version) to sheafbook_app

table book.fund_promise row level security
  storehouse_id uuid not null
  fund_promise_id uuid default uuidv7() not null
  minor_units book.amount not null
  purpose text not null
  equipment_item_id uuid
  override_reason text default ''::text not null
  approved_by uuid not null
  approved_at timestamp with time zone not null
  entry_id uuid
  withdrawn_by uuid
  withdrawn_at timestamp with time zone
  withdrawn_because text
  constraint fund_promise_pkey PRIMARY KEY (storehouse_id, fund_promise_id)
  constraint fund_promise_entry_once UNIQUE (storehouse_id, entry_id)
  constraint fund_promise_approved_by_fk FOREIGN KEY (storehouse_id, approved_by) REFERENCES book.person(storehouse_id, person_id)
  constraint fund_promise_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint fund_promise_item_fk FOREIGN KEY (storehouse_id, equipment_item_id) REFERENCES book.equipment_item(storehouse_id, equipment_item_id)
  constraint fund_promise_withdrawn_by_fk FOREIGN KEY (storehouse_id, withdrawn_by) REFERENCES book.person(storehouse_id, person_id)
  constraint fund_promise_ends_once CHECK (((entry_id IS NULL) OR (withdrawn_at IS NULL)))
  constraint fund_promise_has_a_purpose CHECK ((purpose ~ '\S'::text))
  constraint fund_promise_promises_something CHECK (((minor_units)::bigint > 0))
  constraint fund_promise_withdrawn_whole CHECK ((((withdrawn_at IS NULL) = (withdrawn_by IS NULL)) AND ((withdrawn_at IS NULL) = (withdrawn_because IS NULL))))
  CREATE INDEX fund_promise_by_item ON book.fund_promise USING btree (storehouse_id, equipment_item_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (entry_id, withdrawn_at, withdrawn_because, withdrawn_by) to sheafbook_app

table book.gift_fact row level security
  storehouse_id uuid not null
  container_id uuid not null
  sealed_by text not null
  label_facts text[] not null
  is_treated_seed boolean not null
  is_mouldy boolean not null
  said_by uuid not null
  said_at timestamp with time zone not null
  constraint gift_fact_pkey PRIMARY KEY (storehouse_id, container_id)
  constraint gift_fact_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint gift_fact_said_by_fk FOREIGN KEY (storehouse_id, said_by) REFERENCES book.person(storehouse_id, person_id)
  constraint gift_fact_sealed_by_known CHECK ((sealed_by = ANY (ARRAY['maker'::text, 'home'::text, 'licensed-kitchen'::text, 'unsealed'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (is_mouldy, is_treated_seed, label_facts, said_at, said_by, sealed_by) to sheafbook_app

table book.gift_line row level security
  storehouse_id uuid not null
  gift_manifest_id uuid not null
  container_id uuid not null
  "position" integer not null
  owner_id uuid not null
  grams bigint not null
  eat_first_on date not null
  gift_closes_on date not null
  is_open boolean default true not null
  is_accepted boolean
  refused_because text
  warmth text not null
  sealed_by text not null
  constraint gift_line_pkey PRIMARY KEY (storehouse_id, gift_manifest_id, container_id)
  constraint gift_line_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint gift_line_manifest_fk FOREIGN KEY (storehouse_id, gift_manifest_id) REFERENCES book.gift_manifest(storehouse_id, gift_manifest_id)
  constraint gift_line_owner_fk FOREIGN KEY (storehouse_id, owner_id) REFERENCES book.owner(storehouse_id, owner_id)
  constraint gift_line_open_unanswered CHECK (((NOT is_open) OR (is_accepted IS NULL)))
  constraint gift_line_refusal_explained CHECK (((is_accepted IS FALSE) = (refused_because IS NOT NULL)))
  constraint gift_line_sealer_known CHECK ((sealed_by = ANY (ARRAY['maker'::text, 'home'::text, 'licensed-kitchen'::text, 'unsealed'::text])))
  constraint gift_line_warmth_known CHECK ((warmth = ANY (ARRAY['cool'::text, 'warm'::text, 'unknown'::text])))
  constraint gift_line_weighs_something CHECK ((grams > 0))
  CREATE UNIQUE INDEX gift_line_out_once ON book.gift_line USING btree (storehouse_id, container_id) WHERE is_open
  CREATE TRIGGER gift_is_fit BEFORE INSERT ON book.gift_line FOR EACH ROW EXECUTE FUNCTION book.refuse_unfit_gift()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (is_accepted, is_open, refused_because) to sheafbook_app
  grant select to sheafbook_poster

table book.gift_manifest row level security
  storehouse_id uuid not null
  gift_manifest_id uuid default uuidv7() not null
  manifest_no integer not null
  gift_matching_id uuid not null
  pantry_id uuid not null
  card_version integer not null
  on_day date not null
  driver text not null
  stage text default 'out'::text not null
  signed_out_by uuid not null
  signed_out_at timestamp with time zone not null
  received_on date
  receiver_duty text
  receipt_note text
  received_by uuid
  entry_id uuid
  called_off_because text
  version integer default 1 not null
  constraint gift_manifest_pkey PRIMARY KEY (storehouse_id, gift_manifest_id)
  constraint gift_manifest_no_once UNIQUE (storehouse_id, manifest_no)
  constraint gift_manifest_card_fk FOREIGN KEY (storehouse_id, pantry_id, card_version) REFERENCES book.pantry_card(storehouse_id, pantry_id, card_version)
  constraint gift_manifest_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint gift_manifest_matching_fk FOREIGN KEY (storehouse_id, gift_matching_id) REFERENCES book.gift_matching(storehouse_id, gift_matching_id)
  constraint gift_manifest_received_by_fk FOREIGN KEY (storehouse_id, received_by) REFERENCES book.person(storehouse_id, person_id)
  constraint gift_manifest_signed_out_by_fk FOREIGN KEY (storehouse_id, signed_out_by) REFERENCES book.person(storehouse_id, person_id)
  constraint gift_manifest_calling_off_explained CHECK (((stage = 'called-off'::text) = (called_off_because IS NOT NULL)))
  constraint gift_manifest_has_a_driver CHECK ((driver ~ '\S'::text))
  constraint gift_manifest_received_whole CHECK ((((stage = 'received'::text) = (received_on IS NOT NULL)) AND ((received_on IS NULL) = (receiver_duty IS NULL)) AND ((received_on IS NULL) = (received_by IS NULL)) AND ((entry_id IS NULL) OR (stage = 'received'::text))))
  constraint gift_manifest_stage_known CHECK ((stage = ANY (ARRAY['out'::text, 'received'::text, 'called-off'::text])))
  CREATE INDEX gift_manifest_by_pantry ON book.gift_manifest USING btree (storehouse_id, pantry_id, on_day)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (called_off_because, entry_id, receipt_note, received_by, received_on, receiver_duty, stage, version) to sheafbook_app

table book.gift_matching row level security
  storehouse_id uuid not null
  gift_matching_id uuid default uuidv7() not null
  inputs jsonb not null
  answer jsonb not null
  made_by uuid not null
  made_at timestamp with time zone not null
  constraint gift_matching_pkey PRIMARY KEY (storehouse_id, gift_matching_id)
  constraint gift_matching_made_by_fk FOREIGN KEY (storehouse_id, made_by) REFERENCES book.person(storehouse_id, person_id)
  constraint gift_matching_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

view book.held with (security_invoker=true)
  storehouse_id uuid
  vessel_id uuid
  hold_id uuid
  reason text
  grant select to sheafbook_app
  grant select to sheafbook_poster
  as
 SELECT v.storehouse_id,
    v.vessel_id,
    v.hold_id,
    h.reason
   FROM book.hold_vessel v
     JOIN book.hold h ON h.storehouse_id = v.storehouse_id AND h.hold_id = v.hold_id
  WHERE v.ended_at IS NULL
UNION ALL
 SELECT s.storehouse_id,
    s.container_id AS vessel_id,
    NULL::uuid AS hold_id,
    NULL::text AS reason
   FROM book.seal_hold s
  WHERE s.disposition IS NULL;

view book.held_in_kitchen with (security_invoker=true)
  storehouse_id uuid
  household_id uuid
  lot_id uuid
  hold_id uuid
  reason text
  grant select to sheafbook_app
  grant select to sheafbook_poster
  as
 SELECT DISTINCT k.storehouse_id,
    k.vessel_id AS household_id,
    k.unit_id AS lot_id,
    h.hold_id,
    h.reason
   FROM book.account k
     JOIN book.movement m ON m.storehouse_id = k.storehouse_id AND m.destination_id = k.account_id
     JOIN book.entry e ON e.storehouse_id = m.storehouse_id AND e.entry_id = m.entry_id AND e.reverses_id IS NULL
     JOIN book.account f ON f.storehouse_id = m.storehouse_id AND f.account_id = m.source_id
     JOIN book.hold_vessel v ON v.storehouse_id = f.storehouse_id AND v.vessel_id = f.vessel_id
     JOIN book.hold h ON h.storehouse_id = v.storehouse_id AND h.hold_id = v.hold_id AND h.released_at IS NULL
  WHERE k.vessel_kind = 'kitchen'::text AND NOT (EXISTS ( SELECT
           FROM book.entry u
          WHERE u.storehouse_id = e.storehouse_id AND u.reverses_id = e.entry_id));

table book.helper_grant row level security
  storehouse_id uuid not null
  helper_grant_id uuid default uuidv7() not null
  person_id uuid not null
  household_id uuid not null
  reason text not null
  granted_by uuid not null
  granted_at timestamp with time zone not null
  expires_at timestamp with time zone not null
  ended_at timestamp with time zone
  constraint helper_grant_pkey PRIMARY KEY (storehouse_id, helper_grant_id)
  constraint helper_grant_granted_by_fk FOREIGN KEY (storehouse_id, granted_by) REFERENCES book.person(storehouse_id, person_id)
  constraint helper_grant_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint helper_grant_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint helper_grant_ends CHECK ((expires_at > granted_at))
  CREATE TRIGGER household_still_here BEFORE INSERT ON book.helper_grant FOR EACH ROW EXECUTE FUNCTION book.refuse_left_household()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (ended_at, reason) to sheafbook_app

table book.hold row level security
  storehouse_id uuid not null
  hold_id uuid default uuidv7() not null
  bag_id uuid
  reason text not null
  held_by uuid not null
  held_at timestamp with time zone not null
  finding text default ''::text not null
  release_asked_by uuid
  released_by uuid
  released_at timestamp with time zone
  scope text default 'bag'::text not null
  lot_id uuid
  packing_session_id uuid
  line smallint
  from_serial integer
  to_serial integer
  delivery_id uuid
  supplier_id uuid
  supplier_mark text
  food_id uuid
  from_on date
  to_on date
  place_id uuid
  constraint hold_pkey PRIMARY KEY (storehouse_id, hold_id)
  constraint hold_bag_fk FOREIGN KEY (storehouse_id, bag_id) REFERENCES book.bag(storehouse_id, bag_id)
  constraint hold_delivery_fk FOREIGN KEY (storehouse_id, delivery_id) REFERENCES book.delivery(storehouse_id, delivery_id)
  constraint hold_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  constraint hold_held_by_fk FOREIGN KEY (storehouse_id, held_by) REFERENCES book.person(storehouse_id, person_id)
  constraint hold_lot_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.lot(storehouse_id, lot_id)
  constraint hold_place_fk FOREIGN KEY (storehouse_id, place_id) REFERENCES book.place(storehouse_id, place_id)
  constraint hold_release_asked_by_fk FOREIGN KEY (storehouse_id, release_asked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint hold_released_by_fk FOREIGN KEY (storehouse_id, released_by) REFERENCES book.person(storehouse_id, person_id)
  constraint hold_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint hold_supplier_fk FOREIGN KEY (storehouse_id, supplier_id) REFERENCES book.supplier(storehouse_id, supplier_id)
  constraint hold_release_needs_two CHECK (((released_by IS NULL) OR ((release_asked_by IS NOT NULL) AND (release_asked_by <> released_by) AND (finding ~ '\S'::text))))
  constraint hold_scope_fits CHECK ((((scope = 'bag'::text) = (bag_id IS NOT NULL)) AND ((scope = 'lot'::text) = (lot_id IS NOT NULL)) AND ((scope = 'session'::text) = (packing_session_id IS NOT NULL)) AND ((scope = 'delivery'::text) = (delivery_id IS NOT NULL)) AND ((scope = 'mark'::text) = (supplier_id IS NOT NULL)) AND ((scope = 'mark'::text) = (supplier_mark IS NOT NULL)) AND ((scope = 'food'::text) = (food_id IS NOT NULL)) AND ((scope = 'food'::text) = (from_on IS NOT NULL)) AND ((scope = 'place'::text) = (place_id IS NOT NULL)) AND ((from_on IS NULL) = (to_on IS NULL)) AND (from_on <= to_on)))
  constraint hold_scope_known CHECK ((scope = ANY (ARRAY['bag'::text, 'lot'::text, 'containers'::text, 'session'::text, 'delivery'::text, 'mark'::text, 'food'::text, 'place'::text])))
  constraint hold_window_fits CHECK ((((line IS NULL) OR (scope = 'session'::text)) AND ((from_serial IS NULL) = (to_serial IS NULL)) AND ((from_serial IS NULL) OR (line IS NOT NULL)) AND ((from_serial >= 1) AND (from_serial <= to_serial))))
  CREATE UNIQUE INDEX hold_one_open_per_bag ON book.hold USING btree (storehouse_id, bag_id) WHERE (released_at IS NULL)
  CREATE INDEX hold_open ON book.hold USING btree (storehouse_id) WHERE (released_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (finding, release_asked_by, released_at, released_by) to sheafbook_app
  grant select, update (finding, release_asked_by, released_at) to sheafbook_poster

table book.hold_answer row level security
  storehouse_id uuid not null
  hold_id uuid not null
  household_id uuid not null
  has_some boolean not null
  eaten_on date
  given_on date
  note text default ''::text not null
  answered_by uuid not null
  answered_at timestamp with time zone not null
  constraint hold_answer_pkey PRIMARY KEY (storehouse_id, hold_id, household_id)
  constraint hold_answer_answered_by_fk FOREIGN KEY (storehouse_id, answered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint hold_answer_hold_fk FOREIGN KEY (storehouse_id, hold_id) REFERENCES book.hold(storehouse_id, hold_id)
  constraint hold_answer_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  policy hold_answer_private restrictive for all to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['notice'::text, 'leaving'::text])))) with check ((household_id = ( SELECT book.current_household() AS current_household)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (answered_at, answered_by, eaten_on, given_on, has_some, note) to sheafbook_app

table book.hold_slip row level security
  storehouse_id uuid not null
  hold_slip_id uuid default uuidv7() not null
  hold_id uuid not null
  household_id uuid
  pantry_id uuid
  signed_by text not null
  written_on date not null
  note text default ''::text not null
  keyed_by uuid not null
  keyed_at timestamp with time zone not null
  constraint hold_slip_pkey PRIMARY KEY (storehouse_id, hold_slip_id)
  constraint hold_slip_hold_fk FOREIGN KEY (storehouse_id, hold_id) REFERENCES book.hold(storehouse_id, hold_id)
  constraint hold_slip_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint hold_slip_keyed_by_fk FOREIGN KEY (storehouse_id, keyed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint hold_slip_pantry_fk FOREIGN KEY (storehouse_id, pantry_id) REFERENCES book.pantry(storehouse_id, pantry_id)
  constraint hold_slip_of_one CHECK (((household_id IS NULL) <> (pantry_id IS NULL)))
  constraint hold_slip_signed CHECK ((signed_by ~ '\S'::text))
  constraint hold_slip_written_first CHECK ((written_on <= (((keyed_at AT TIME ZONE 'UTC'::text))::date + 1)))
  CREATE INDEX hold_slip_by_hold ON book.hold_slip USING btree (storehouse_id, hold_id)
  policy hold_slip_private restrictive for all to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['notice'::text, 'leaving'::text])))) with check (((household_id IS NULL) OR (( SELECT book.current_task() AS current_task) = 'notice'::text)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.hold_slip_line row level security
  storehouse_id uuid not null
  hold_slip_id uuid not null
  vessel_id uuid not null
  became text not null
  constraint hold_slip_line_pkey PRIMARY KEY (storehouse_id, hold_slip_id, vessel_id)
  constraint hold_slip_line_slip_fk FOREIGN KEY (storehouse_id, hold_slip_id) REFERENCES book.hold_slip(storehouse_id, hold_slip_id)
  constraint hold_slip_line_vessel_fk FOREIGN KEY (storehouse_id, vessel_id) REFERENCES book.vessel(storehouse_id, vessel_id)
  constraint hold_slip_line_became_known CHECK ((became = ANY (ARRAY['aside'::text, 'eaten'::text, 'given'::text, 'thrown-away'::text, 'never-had'::text])))
  policy hold_slip_line_private restrictive for all to public using (((storehouse_id, hold_slip_id) IN ( SELECT s.storehouse_id,
    s.hold_slip_id
   FROM book.hold_slip s)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.hold_vessel row level security
  storehouse_id uuid not null
  hold_id uuid not null
  vessel_id uuid not null
  reached_at timestamp with time zone not null
  ended_at timestamp with time zone
  constraint hold_vessel_pkey PRIMARY KEY (storehouse_id, hold_id, vessel_id)
  constraint hold_vessel_hold_fk FOREIGN KEY (storehouse_id, hold_id) REFERENCES book.hold(storehouse_id, hold_id)
  constraint hold_vessel_vessel_fk FOREIGN KEY (storehouse_id, vessel_id) REFERENCES book.vessel(storehouse_id, vessel_id)
  constraint hold_vessel_runs_forward CHECK ((reached_at <= ended_at))
  CREATE INDEX hold_vessel_standing ON book.hold_vessel USING btree (storehouse_id, vessel_id) WHERE (ended_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (ended_at) to sheafbook_app
  grant insert, select, update (ended_at) to sheafbook_poster

table book.household row level security
  storehouse_id uuid not null
  household_id uuid not null
  owner_kind text default 'household'::text not null
  seat integer not null
  name text not null
  joined_on date not null
  left_on date
  version integer default 1 not null
  constraint household_pkey PRIMARY KEY (storehouse_id, household_id)
  constraint household_name_once UNIQUE (storehouse_id, name)
  constraint household_seat_once UNIQUE (storehouse_id, seat)
  constraint household_owner_fk FOREIGN KEY (storehouse_id, household_id, owner_kind) REFERENCES book.owner(storehouse_id, owner_id, kind)
  constraint household_is_an_owner CHECK ((owner_kind = 'household'::text))
  constraint household_leaves_after_joining CHECK ((left_on >= joined_on))
  constraint household_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  constraint household_seat_positive CHECK ((seat > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (left_on, name, version) to sheafbook_app

table book.household_contact row level security
  storehouse_id uuid not null
  household_id uuid not null
  phone text default ''::text not null
  address text default ''::text not null
  shown_to_members boolean default false not null
  version integer default 1 not null
  email text default ''::text not null
  constraint household_contact_pkey PRIMARY KEY (storehouse_id, household_id)
  constraint household_contact_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint household_contact_email_plain CHECK (((email = ''::text) OR ((email = lower(email)) AND (email ~ '^[^\s@]+@[^\s@]+$'::text) AND (length(email) <= 254))))
  CREATE TRIGGER household_still_here BEFORE INSERT ON book.household_contact FOR EACH ROW EXECUTE FUNCTION book.refuse_left_household()
  policy household_contact_private restrictive for all to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR shown_to_members OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['contact'::text, 'leaving'::text, 'take-along'::text, 'import'::text])))) with check (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = 'leaving'::text) OR ((( SELECT book.current_task() AS current_task) = 'import'::text) AND (NOT shown_to_members))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update to sheafbook_app

table book.household_guideline row level security
  storehouse_id uuid not null
  household_id uuid not null
  food_group text not null
  grams_per_adult_year book.amount not null
  constraint household_guideline_pkey PRIMARY KEY (storehouse_id, household_id, food_group)
  constraint household_guideline_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  policy household_guideline_private restrictive for all to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['coverage-totals'::text, 'need-first'::text, 'leaving'::text])))) with check ((household_id = ( SELECT book.current_household() AS current_household)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update to sheafbook_app

table book.household_plan row level security
  storehouse_id uuid not null
  household_id uuid not null
  need_basis text default 'guideline'::text not null
  target_days integer default 365 not null
  target_groups text[] default '{grains,legumes}'::text[] not null
  add_year boolean default false not null
  version integer default 1 not null
  constraint household_plan_pkey PRIMARY KEY (storehouse_id, household_id)
  constraint household_plan_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint household_plan_basis_known CHECK ((need_basis = ANY (ARRAY['guideline'::text, 'energy'::text])))
  constraint household_plan_target_in_range CHECK (((target_days >= 1) AND (target_days <= 3650)))
  CREATE TRIGGER household_still_here BEFORE INSERT ON book.household_plan FOR EACH ROW EXECUTE FUNCTION book.refuse_left_household()
  policy household_plan_private restrictive for all to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['coverage-totals'::text, 'need-first'::text, 'leaving'::text])))) with check ((household_id = ( SELECT book.current_household() AS current_household)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update to sheafbook_app

table book.import row level security
  storehouse_id uuid not null
  import_id uuid not null
  import_no integer not null
  opening_on date not null
  imported_by uuid not null
  imported_at timestamp with time zone not null
  constraint import_pkey PRIMARY KEY (storehouse_id, import_id)
  constraint import_no_once UNIQUE (storehouse_id, import_no)
  constraint import_imported_by_fk FOREIGN KEY (storehouse_id, imported_by) REFERENCES book.person(storehouse_id, person_id)
  constraint import_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.import_file row level security
  storehouse_id uuid not null
  import_id uuid not null
  "position" integer not null
  kind text not null
  file_name text not null
  sha256 text not null
  new_rows integer not null
  skipped_rows integer not null
  taken_back boolean default false not null
  constraint import_file_pkey PRIMARY KEY (storehouse_id, import_id, "position")
  constraint import_file_import_fk FOREIGN KEY (storehouse_id, import_id) REFERENCES book.import(storehouse_id, import_id)
  constraint import_file_counts CHECK (((new_rows >= 0) AND (skipped_rows >= 0)))
  constraint import_file_hashed CHECK ((sha256 ~ '^[0-9a-f]{64}$'::text))
  constraint import_file_kind_known CHECK ((kind = ANY (ARRAY['households'::text, 'eaters'::text, 'foods'::text, 'balances'::text, 'stock'::text, 'equipment'::text])))
  CREATE UNIQUE INDEX import_file_once ON book.import_file USING btree (storehouse_id, sha256) WHERE (NOT taken_back)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (taken_back) to sheafbook_app

table book.import_thing row level security
  storehouse_id uuid not null
  import_id uuid not null
  kind text not null
  thing_id uuid not null
  constraint import_thing_pkey PRIMARY KEY (storehouse_id, import_id, thing_id)
  constraint import_thing_import_fk FOREIGN KEY (storehouse_id, import_id) REFERENCES book.import(storehouse_id, import_id)
  constraint import_thing_kind_known CHECK ((kind = ANY (ARRAY['household'::text, 'person'::text, 'eater'::text, 'food'::text, 'supplier'::text, 'equipment_item'::text, 'lot'::text, 'container'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.import_undoing row level security
  storehouse_id uuid not null
  import_id uuid not null
  undone_by uuid not null
  undone_at timestamp with time zone not null
  reason text not null
  constraint import_undoing_pkey PRIMARY KEY (storehouse_id, import_id)
  constraint import_undoing_import_fk FOREIGN KEY (storehouse_id, import_id) REFERENCES book.import(storehouse_id, import_id)
  constraint import_undoing_undone_by_fk FOREIGN KEY (storehouse_id, undone_by) REFERENCES book.person(storehouse_id, person_id)
  constraint import_undoing_explained CHECK (((reason ~ '\S'::text) AND (length(reason) <= 500)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.inspection row level security
  storehouse_id uuid not null
  inspection_id uuid default uuidv7() not null
  container_id uuid not null
  household_id uuid
  how text not null
  findings text[] not null
  best text not null
  outcome text not null
  damaged_kernels integer
  sample_grams integer
  note text default ''::text not null
  entry_id uuid
  inspected_by uuid not null
  inspected_at timestamp with time zone not null
  inspected_on date not null
  constraint inspection_pkey PRIMARY KEY (storehouse_id, inspection_id)
  constraint inspection_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint inspection_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint inspection_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint inspection_inspected_by_fk FOREIGN KEY (storehouse_id, inspected_by) REFERENCES book.person(storehouse_id, person_id)
  constraint inspection_findings_known CHECK ((findings <@ ARRAY['nothing-wrong'::text, 'bulge-hiss-spurt'::text, 'surface-rust'::text, 'pitting-or-seam-rust'::text, 'dented-body'::text, 'dented-seam'::text, 'leak'::text, 'loose-seal'::text, 'torn-liner'::text, 'absorber-hard'::text, 'rancid-smell'::text, 'sour-or-musty-smell'::text, 'chemical-smell'::text, 'live-insects'::text, 'webbing'::text, 'insect-damaged-kernels'::text, 'stones-or-chaff'::text, 'glass-or-metal'::text, 'wet-or-caked'::text, 'mould'::text, 'rodent-marks'::text, 'dark-colour'::text, 'dyed-seed'::text, 'stale-taste'::text]))
  constraint inspection_finds_something CHECK (((cardinality(findings) > 0) AND ((cardinality(findings) = 1) OR ('nothing-wrong'::text <> ALL (findings)))))
  constraint inspection_how_known CHECK ((how = ANY (ARRAY['outside'::text, 'opened'::text])))
  constraint inspection_kernels_of_a_sample CHECK ((((damaged_kernels IS NULL) = (sample_grams IS NULL)) AND (damaged_kernels >= 0) AND (sample_grams > 0)))
  constraint inspection_moves_what_is_lost CHECK (((entry_id IS NULL) OR (outcome = ANY (ARRAY['animals'::text, 'compost'::text, 'discard'::text]))))
  constraint inspection_outcome_known CHECK (((outcome = ANY (ARRAY['table'::text, 'kitchen-soon'::text, 'freeze-and-repack'::text, 'animals'::text, 'compost'::text, 'discard'::text])) AND (best = ANY (ARRAY['table'::text, 'kitchen-soon'::text, 'freeze-and-repack'::text, 'animals'::text, 'compost'::text, 'discard'::text]))))
  constraint inspection_outcome_never_laxer CHECK ((array_position(ARRAY['table'::text, 'kitchen-soon'::text, 'freeze-and-repack'::text, 'animals'::text, 'compost'::text, 'discard'::text], outcome) >= array_position(ARRAY['table'::text, 'kitchen-soon'::text, 'freeze-and-repack'::text, 'animals'::text, 'compost'::text, 'discard'::text], best)))
  CREATE INDEX inspection_by_container ON book.inspection USING btree (storehouse_id, container_id, inspected_at DESC)
  policy inspection_private restrictive for all to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['giving'::text, 'lids'::text])))) with check (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.intake row level security
  storehouse_id uuid not null
  lot_id uuid not null
  household_id uuid
  packed_by text not null
  packed_how text not null
  summers text not null
  harm text not null
  pests text not null
  opened text not null
  is_unknown_history boolean not null
  allergens_met text default ''::text not null
  note text default ''::text not null
  taken_by uuid not null
  taken_at timestamp with time zone not null
  constraint intake_pkey PRIMARY KEY (storehouse_id, lot_id)
  constraint intake_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint intake_lot_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.lot(storehouse_id, lot_id)
  constraint intake_taken_by_fk FOREIGN KEY (storehouse_id, taken_by) REFERENCES book.person(storehouse_id, person_id)
  constraint intake_answers_known CHECK (((packed_by = ANY (ARRAY['paper'::text, 'memory'::text, 'unknown'::text])) AND (packed_how = ANY (ARRAY['bought-sealed'::text, 'home-packed'::text, 'unknown'::text])) AND (summers = ANY (ARRAY['cellar'::text, 'kitchen'::text, 'garage'::text, 'unknown'::text])) AND (pests = ANY (ARRAY['no'::text, 'yes'::text, 'unknown'::text])) AND (opened = ANY (ARRAY['no'::text, 'yes'::text, 'unknown'::text]))))
  constraint intake_never_near_chemicals CHECK ((harm = ANY (ARRAY['never'::text, 'wet'::text, 'unknown'::text])))
  constraint intake_unknown_is_cautious CHECK ((is_unknown_history = ((packed_by = 'unknown'::text) OR (summers = 'unknown'::text) OR (harm = ANY (ARRAY['wet'::text, 'unknown'::text])))))
  CREATE INDEX intake_by_household ON book.intake USING btree (storehouse_id, household_id)
  policy intake_private restrictive for all to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.intake_donor row level security
  storehouse_id uuid not null
  lot_id uuid not null
  household_id uuid
  donor text not null
  constraint intake_donor_pkey PRIMARY KEY (storehouse_id, lot_id)
  constraint intake_donor_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint intake_donor_intake_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.intake(storehouse_id, lot_id)
  constraint intake_donor_named CHECK ((donor ~ '\S'::text))
  policy intake_donor_private restrictive for select to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR ((household_id IS NULL) AND (( SELECT book.current_task() AS current_task) = 'donor'::text))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.invitation row level security
  storehouse_id uuid not null
  invitation_id uuid default uuidv7() not null
  token_hash text not null
  household_id uuid
  household_name text
  made_by uuid not null
  made_at timestamp with time zone not null
  expires_at timestamp with time zone not null
  used_at timestamp with time zone
  withdrawn_at timestamp with time zone
  constraint invitation_pkey PRIMARY KEY (storehouse_id, invitation_id)
  constraint invitation_token_once UNIQUE (storehouse_id, token_hash)
  constraint invitation_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint invitation_made_by_fk FOREIGN KEY (storehouse_id, made_by) REFERENCES book.person(storehouse_id, person_id)
  constraint invitation_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  CREATE TRIGGER household_still_here BEFORE INSERT ON book.invitation FOR EACH ROW EXECUTE FUNCTION book.refuse_left_household()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (household_id, household_name, used_at, withdrawn_at) to sheafbook_app

table book.invoice row level security
  storehouse_id uuid not null
  invoice_id uuid default uuidv7() not null
  buy_id uuid not null
  supplier_id uuid not null
  number text not null
  on_day date not null
  foreign_note text default ''::text not null
  entered_by uuid not null
  entered_at timestamp with time zone not null
  entry_id uuid not null
  voided_by uuid
  voided_at timestamp with time zone
  void_reason text default ''::text not null
  due_on date
  constraint invoice_pkey PRIMARY KEY (storehouse_id, invoice_id)
  constraint invoice_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint invoice_entered_by_fk FOREIGN KEY (storehouse_id, entered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint invoice_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint invoice_supplier_fk FOREIGN KEY (storehouse_id, supplier_id) REFERENCES book.supplier(storehouse_id, supplier_id)
  constraint invoice_voided_by_fk FOREIGN KEY (storehouse_id, voided_by) REFERENCES book.person(storehouse_id, person_id)
  constraint invoice_due_from_its_day CHECK ((due_on >= on_day))
  constraint invoice_numbered CHECK ((number ~ '\S'::text))
  constraint invoice_void_explained CHECK (((voided_at IS NULL) OR ((voided_by IS NOT NULL) AND (void_reason ~ '\S'::text))))
  CREATE INDEX invoice_by_buy ON book.invoice USING btree (storehouse_id, buy_id)
  CREATE UNIQUE INDEX invoice_number_once ON book.invoice USING btree (storehouse_id, supplier_id, number) WHERE (voided_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (void_reason, voided_at, voided_by) to sheafbook_app

table book.invoice_line row level security
  storehouse_id uuid not null
  invoice_id uuid not null
  line_no integer not null
  kind text not null
  buy_id uuid not null
  buy_line_id uuid
  minor_units book.amount not null
  constraint invoice_line_pkey PRIMARY KEY (storehouse_id, invoice_id, line_no)
  constraint invoice_line_buy_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint invoice_line_invoice_fk FOREIGN KEY (storehouse_id, invoice_id) REFERENCES book.invoice(storehouse_id, invoice_id)
  constraint invoice_line_asks_something CHECK (((minor_units)::bigint > 0))
  constraint invoice_line_goods_name_a_line CHECK (((kind = 'goods'::text) = (buy_line_id IS NOT NULL)))
  constraint invoice_line_kind_known CHECK ((kind = ANY (ARRAY['goods'::text, 'freight'::text, 'other'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.kept_answer row level security
  storehouse_id uuid not null
  login_id uuid not null
  idempotency_key text not null
  request_hash text not null
  status integer not null
  body jsonb
  kept_at timestamp with time zone not null
  constraint kept_answer_pkey PRIMARY KEY (storehouse_id, login_id, idempotency_key)
  constraint kept_answer_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint kept_answer_key_length CHECK (((length(idempotency_key) >= 1) AND (length(idempotency_key) <= 200)))
  policy housekeeping for all to sheafbook_housekeeping using (true)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (body, status) to sheafbook_app
  grant delete, select to sheafbook_housekeeping

table book.keying row level security
  storehouse_id uuid not null
  keying_id uuid default uuidv7() not null
  what text not null
  subject_id uuid not null
  buy_id uuid not null
  household_id uuid
  paper_id uuid
  written_at timestamp with time zone not null
  keyed_at timestamp with time zone not null
  keyed_by uuid not null
  is_entered_for boolean not null
  constraint keying_pkey PRIMARY KEY (storehouse_id, keying_id)
  constraint keying_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint keying_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint keying_keyed_by_fk FOREIGN KEY (storehouse_id, keyed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint keying_paper_fk FOREIGN KEY (storehouse_id, paper_id) REFERENCES book.paper(storehouse_id, paper_id)
  constraint keying_what_known CHECK ((what = ANY (ARRAY['pledge'::text, 'delivery'::text, 'count'::text, 'bag'::text, 'weight'::text, 'pick-up'::text])))
  constraint keying_written_first CHECK ((written_at <= keyed_at))
  CREATE INDEX keying_by_buy ON book.keying USING btree (storehouse_id, buy_id)
  CREATE INDEX keying_by_subject ON book.keying USING btree (storehouse_id, subject_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.letter row level security
  storehouse_id uuid not null
  letter_id uuid not null
  person_id uuid not null
  kind text not null
  subject text not null
  body_text text not null
  body_html text not null
  stop_url text
  state text default 'waiting'::text not null
  unsent_because text
  sending_at timestamp with time zone
  ended_at timestamp with time zone
  constraint letter_pkey PRIMARY KEY (storehouse_id, letter_id)
  constraint letter_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint letter_work_fk FOREIGN KEY (storehouse_id, letter_id) REFERENCES book.work(storehouse_id, work_id) ON DELETE CASCADE
  constraint letter_kind_named CHECK ((kind ~ '^[a-z][a-z-]{0,60}$'::text))
  constraint letter_state_known CHECK ((state = ANY (ARRAY['waiting'::text, 'sending'::text, 'sent'::text, 'unsent'::text])))
  constraint letter_stop_url_plain CHECK (((stop_url ~ '^https?://[!-~]+$'::text) AND (stop_url !~ '[<>]'::text)))
  constraint letter_subject_is_one_line CHECK (((subject ~ '\S'::text) AND (subject !~ '[[:cntrl:]]'::text) AND (length(subject) <= 200)))
  constraint letter_unsent_explained CHECK (((state = 'unsent'::text) = (unsent_because IS NOT NULL)))
  CREATE INDEX letter_by_person ON book.letter USING btree (storehouse_id, person_id)
  policy letter_private restrictive for all to public using ((( SELECT book.current_task() AS current_task) = ANY (ARRAY['letter'::text, 'leaving'::text]))) with check (true)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (ended_at, sending_at, state, unsent_because) to sheafbook_app

table book.lid_check row level security
  storehouse_id uuid not null
  lid_check_id uuid default uuidv7() not null
  container_id uuid not null
  household_id uuid
  closed_at timestamp with time zone not null
  says text not null
  note text default ''::text not null
  checked_by uuid not null
  checked_at timestamp with time zone not null
  recorded_at timestamp with time zone not null
  constraint lid_check_pkey PRIMARY KEY (storehouse_id, lid_check_id)
  constraint lid_check_said_once UNIQUE (storehouse_id, container_id, closed_at, says)
  constraint lid_check_checked_by_fk FOREIGN KEY (storehouse_id, checked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint lid_check_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint lid_check_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint lid_check_after_closing CHECK (((checked_at >= closed_at) AND ((says <> 'closed-again'::text) OR (checked_at = closed_at))))
  constraint lid_check_says_known CHECK ((says = ANY (ARRAY['held'::text, 'loose'::text, 'closed-again'::text])))
  policy lid_check_private restrictive for all to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['giving'::text, 'lids'::text])))) with check (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = 'lids'::text)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

view book.line_closed with (security_invoker=true)
  storehouse_id uuid
  packing_session_id uuid
  line smallint
  serial integer
  container_id uuid
  household_id uuid
  grams book.amount
  closed_at timestamp with time zone
  undone_entry_id uuid
  grant select to sheafbook_app
  as
 SELECT packing_pour.storehouse_id,
    packing_pour.packing_session_id,
    packing_pour.line,
    packing_pour.serial,
    packing_pour.container_id,
    packing_pour.household_id,
    packing_pour.grams,
    packing_pour.poured_at AS closed_at,
    packing_pour.undone_entry_id
   FROM book.packing_pour
UNION ALL
 SELECT re_can.storehouse_id,
    re_can.packing_session_id,
    re_can.line,
    re_can.serial,
    re_can.new_container_id AS container_id,
    re_can.household_id,
    re_can.grams,
    re_can.done_at AS closed_at,
    re_can.undone_entry_id
   FROM book.re_can;

table book.loan row level security
  storehouse_id uuid not null
  loan_id uuid default uuidv7() not null
  booking_id uuid not null
  equipment_unit_id uuid not null
  household_id uuid not null
  out_at timestamp with time zone not null
  due_at timestamp with time zone not null
  in_at timestamp with time zone
  handed_out_by uuid not null
  taken_by text not null
  taken_back_by uuid
  brought_by text
  condition_in text
  note_out text default ''::text not null
  note_in text default ''::text not null
  deposit_minor_units book.amount not null
  deposit_from text not null
  refund_to text
  refund_minor_units book.amount
  kept_minor_units book.amount
  fee_minor_units book.amount
  late_minor_units book.amount
  is_late_waived boolean default false not null
  parts_minor_units book.amount
  damage_minor_units book.amount
  relayed_from_id uuid
  constraint loan_pkey PRIMARY KEY (storehouse_id, loan_id)
  constraint loan_booking_once UNIQUE (storehouse_id, booking_id)
  constraint loan_of_its_piece UNIQUE (storehouse_id, equipment_unit_id, loan_id)
  constraint loan_relayed_once UNIQUE (storehouse_id, relayed_from_id)
  constraint loan_booking_fk FOREIGN KEY (storehouse_id, booking_id) REFERENCES book.booking(storehouse_id, booking_id)
  constraint loan_handed_out_by_fk FOREIGN KEY (storehouse_id, handed_out_by) REFERENCES book.person(storehouse_id, person_id)
  constraint loan_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint loan_relayed_from_fk FOREIGN KEY (storehouse_id, relayed_from_id) REFERENCES book.loan(storehouse_id, loan_id) DEFERRABLE
  constraint loan_taken_back_by_fk FOREIGN KEY (storehouse_id, taken_back_by) REFERENCES book.person(storehouse_id, person_id)
  constraint loan_unit_fk FOREIGN KEY (storehouse_id, equipment_unit_id) REFERENCES book.equipment_unit(storehouse_id, equipment_unit_id)
  constraint loan_back_after_out CHECK ((out_at <= in_at))
  constraint loan_back_whole CHECK ((num_nonnulls(in_at, taken_back_by, brought_by, condition_in, refund_to, refund_minor_units, kept_minor_units, fee_minor_units, late_minor_units, parts_minor_units, damage_minor_units) = ANY (ARRAY[0, 11])))
  constraint loan_condition_known CHECK ((condition_in = ANY (ARRAY['ready'::text, 'dirty'::text, 'broken'::text])))
  constraint loan_deposit_from_known CHECK ((deposit_from = ANY (ARRAY['bank'::text, 'cash_tin'::text, 'household'::text])))
  constraint loan_deposit_settled CHECK (((((refund_minor_units)::bigint + (kept_minor_units)::bigint) = (deposit_minor_units)::bigint) AND ((kept_minor_units)::bigint <= (((late_minor_units)::bigint + (parts_minor_units)::bigint) + (damage_minor_units)::bigint))))
  constraint loan_refund_to_known CHECK ((refund_to = ANY (ARRAY['bank'::text, 'cash_tin'::text, 'household'::text])))
  constraint loan_one_at_a_time EXCLUDE USING gist (storehouse_id WITH =, equipment_unit_id WITH =, tstzrange(out_at, in_at, '[)'::text) WITH &&)
  CREATE INDEX loan_by_household ON book.loan USING btree (storehouse_id, household_id, out_at)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (brought_by, condition_in, damage_minor_units, fee_minor_units, in_at, is_late_waived, kept_minor_units, late_minor_units, note_in, parts_minor_units, refund_minor_units, refund_to, taken_back_by) to sheafbook_app

table book.loan_part row level security
  storehouse_id uuid not null
  loan_id uuid not null
  equipment_part_id uuid not null
  name text not null
  is_critical boolean not null
  value_minor_units book.amount not null
  out_pieces integer not null
  in_pieces integer
  constraint loan_part_pkey PRIMARY KEY (storehouse_id, loan_id, equipment_part_id)
  constraint loan_part_loan_fk FOREIGN KEY (storehouse_id, loan_id) REFERENCES book.loan(storehouse_id, loan_id)
  constraint loan_part_part_fk FOREIGN KEY (storehouse_id, equipment_part_id) REFERENCES book.equipment_part(storehouse_id, equipment_part_id)
  constraint loan_part_back_of_out CHECK (((out_pieces >= 0) AND ((in_pieces >= 0) AND (in_pieces <= out_pieces))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (in_pieces) to sheafbook_app

table book.lot row level security
  storehouse_id uuid not null
  lot_id uuid not null
  unit_kind text default 'lot'::text not null
  food_id uuid not null
  buy_line_id uuid
  supplier_id uuid
  supplier_mark text default ''::text not null
  harvest_year integer
  origin_note text default ''::text not null
  made_on date not null
  constraint lot_pkey PRIMARY KEY (storehouse_id, lot_id)
  constraint lot_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  constraint lot_line_fk FOREIGN KEY (storehouse_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_line_id)
  constraint lot_supplier_fk FOREIGN KEY (storehouse_id, supplier_id) REFERENCES book.supplier(storehouse_id, supplier_id)
  constraint lot_unit_fk FOREIGN KEY (storehouse_id, lot_id, unit_kind) REFERENCES book.unit(storehouse_id, unit_id, kind)
  constraint lot_harvest_in_range CHECK (((harvest_year >= 1950) AND (harvest_year <= 2200)))
  constraint lot_has_an_origin CHECK (((buy_line_id IS NOT NULL) OR (origin_note ~ '\S'::text)))
  constraint lot_is_a_unit CHECK ((unit_kind = 'lot'::text))
  CREATE UNIQUE INDEX lot_mark_once ON book.lot USING btree (storehouse_id, buy_line_id, supplier_mark) WHERE (buy_line_id IS NOT NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (harvest_year) to sheafbook_app
  grant select to sheafbook_poster

table book.maintenance row level security
  storehouse_id uuid not null
  maintenance_id uuid default uuidv7() not null
  equipment_unit_id uuid not null
  done_on date not null
  what text not null
  is_service boolean not null
  recorded_by uuid not null
  recorded_at timestamp with time zone not null
  constraint maintenance_pkey PRIMARY KEY (storehouse_id, maintenance_id)
  constraint maintenance_recorded_by_fk FOREIGN KEY (storehouse_id, recorded_by) REFERENCES book.person(storehouse_id, person_id)
  constraint maintenance_unit_fk FOREIGN KEY (storehouse_id, equipment_unit_id) REFERENCES book.equipment_unit(storehouse_id, equipment_unit_id)
  constraint maintenance_told CHECK (((what ~ '\S'::text) AND (length(what) <= 500)))
  CREATE INDEX maintenance_by_unit ON book.maintenance USING btree (storehouse_id, equipment_unit_id, done_on)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.missing_part row level security
  storehouse_id uuid not null
  equipment_unit_id uuid not null
  equipment_part_id uuid not null
  pieces integer not null
  constraint missing_part_pkey PRIMARY KEY (storehouse_id, equipment_unit_id, equipment_part_id)
  constraint missing_part_part_fk FOREIGN KEY (storehouse_id, equipment_part_id) REFERENCES book.equipment_part(storehouse_id, equipment_part_id)
  constraint missing_part_unit_fk FOREIGN KEY (storehouse_id, equipment_unit_id) REFERENCES book.equipment_unit(storehouse_id, equipment_unit_id)
  constraint missing_part_has_pieces CHECK ((pieces > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update to sheafbook_app

table book.moisture_change row level security
  storehouse_id uuid not null
  entry_id uuid not null
  bag_id uuid not null
  was_tenths integer not null
  is_tenths integer not null
  booked_grams book.amount not null
  weighed_grams book.amount not null
  constraint moisture_change_pkey PRIMARY KEY (storehouse_id, entry_id)
  constraint moisture_change_bag_fk FOREIGN KEY (storehouse_id, bag_id) REFERENCES book.bag(storehouse_id, bag_id)
  constraint moisture_change_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint moisture_change_changes_weight CHECK (((booked_grams)::bigint <> (weighed_grams)::bigint))
  constraint moisture_change_is_of_grain CHECK ((((was_tenths >= 0) AND (was_tenths <= 500)) AND ((is_tenths >= 0) AND (is_tenths <= 500))))
  CREATE INDEX moisture_change_by_bag ON book.moisture_change USING btree (storehouse_id, bag_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.movement row level security
  storehouse_id uuid not null
  entry_id uuid not null
  line smallint not null
  unit_id uuid not null
  source_id uuid not null
  destination_id uuid not null
  amount bigint not null
  constraint movement_pkey PRIMARY KEY (storehouse_id, entry_id, line)
  constraint movement_destination_fk FOREIGN KEY (storehouse_id, destination_id, unit_id) REFERENCES book.account(storehouse_id, account_id, unit_id)
  constraint movement_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint movement_source_fk FOREIGN KEY (storehouse_id, source_id, unit_id) REFERENCES book.account(storehouse_id, account_id, unit_id)
  constraint movement_amount_positive CHECK (((amount > 0) AND (amount <= '9007199254740991'::bigint)))
  constraint movement_goes_somewhere CHECK ((source_id <> destination_id))
  CREATE INDEX movement_by_destination ON book.movement USING btree (storehouse_id, destination_id, entry_id DESC)
  CREATE INDEX movement_by_source ON book.movement USING btree (storehouse_id, source_id, entry_id DESC)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant select to sheafbook_app
  grant insert, select to sheafbook_poster

table book.notice row level security
  storehouse_id uuid not null
  notice_id uuid default uuidv7() not null
  kind text not null
  audience text not null
  duty text
  household_id uuid
  buy_id uuid
  about text not null
  says text not null
  says_es text not null
  due_on date
  path text default ''::text not null
  is_safety boolean not null
  written_by uuid
  written_at timestamp with time zone not null
  withdrawn_at timestamp with time zone
  about_es text default ''::text not null
  constraint notice_pkey PRIMARY KEY (storehouse_id, notice_id)
  constraint notice_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint notice_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint notice_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint notice_written_by_fk FOREIGN KEY (storehouse_id, written_by) REFERENCES book.person(storehouse_id, person_id)
  constraint notice_audience_fits CHECK ((((audience = 'duty'::text) = (duty IS NOT NULL)) AND ((audience = 'household'::text) = (household_id IS NOT NULL)) AND ((audience <> 'buy'::text) OR (buy_id IS NOT NULL))))
  constraint notice_audience_known CHECK ((audience = ANY (ARRAY['everyone'::text, 'duty'::text, 'household'::text, 'buy'::text])))
  constraint notice_duty_known CHECK ((duty = ANY (ARRAY['coordinator'::text, 'treasurer'::text, 'packing_lead'::text, 'equipment_keeper'::text, 'reviewer'::text])))
  constraint notice_kind_known CHECK ((kind = ANY (ARRAY['written'::text, 'stage'::text, 'landing-moved'::text, 'held'::text, 'released'::text, 'packing'::text, 'offer'::text, 'equipment'::text])))
  constraint notice_of_a_person_has_its_writer CHECK (((kind <> 'written'::text) OR (written_by IS NOT NULL)))
  constraint notice_says_something CHECK (((about ~ '\S'::text) AND (says ~ '\S'::text)))
  CREATE INDEX notice_by_buy ON book.notice USING btree (storehouse_id, buy_id)
  CREATE INDEX notice_by_household ON book.notice USING btree (storehouse_id, household_id)
  policy notice_private restrictive for select to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['notice'::text, 'leaving'::text, 'take-along'::text]))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (withdrawn_at) to sheafbook_app

view book.notice_acknowledged with (security_invoker=true)
  storehouse_id uuid
  notice_id uuid
  household_id uuid
  acknowledged_at timestamp with time zone
  grant select to sheafbook_app
  as
 SELECT r.storehouse_id,
    r.notice_id,
    r.household_id,
    r.acknowledged_at
   FROM book.notice_reading r
  WHERE r.acknowledged_at IS NOT NULL AND r.household_id IS NOT NULL
UNION ALL
 SELECT n.storehouse_id,
    n.notice_id,
    s.household_id,
    s.keyed_at AS acknowledged_at
   FROM book.hold_slip s
     JOIN book.notice n ON n.storehouse_id = s.storehouse_id AND n.household_id = s.household_id AND n.kind = 'held'::text AND n.path = ((('/api/storehouses/'::text || s.storehouse_id) || '/holds/'::text) || s.hold_id) AND n.written_at <= s.keyed_at;

table book.notice_reading row level security
  storehouse_id uuid not null
  notice_reading_id uuid default uuidv7() not null
  notice_id uuid not null
  person_id uuid not null
  household_id uuid
  read_at timestamp with time zone not null
  acknowledged_at timestamp with time zone
  constraint notice_reading_pkey PRIMARY KEY (storehouse_id, notice_reading_id)
  constraint notice_reading_once UNIQUE NULLS NOT DISTINCT (storehouse_id, notice_id, person_id, household_id)
  constraint notice_reading_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint notice_reading_notice_fk FOREIGN KEY (storehouse_id, notice_id) REFERENCES book.notice(storehouse_id, notice_id)
  constraint notice_reading_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint notice_reading_read_first CHECK ((read_at <= acknowledged_at))
  CREATE INDEX notice_reading_by_household ON book.notice_reading USING btree (storehouse_id, household_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (acknowledged_at) to sheafbook_app

table book.offer row level security
  storehouse_id uuid not null
  offer_id uuid default uuidv7() not null
  household_id uuid
  food_id uuid not null
  price_kind text not null
  window_hours integer not null
  offered_at timestamp with time zone not null
  open_at timestamp with time zone not null
  closes_at timestamp with time zone not null
  goes_to_pantry boolean not null
  note text default ''::text not null
  offered_by uuid not null
  constraint offer_pkey PRIMARY KEY (storehouse_id, offer_id)
  constraint offer_times_once UNIQUE (storehouse_id, offer_id, offered_at, closes_at)
  constraint offer_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  constraint offer_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint offer_offered_by_fk FOREIGN KEY (storehouse_id, offered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint offer_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint offer_price_kind_known CHECK ((price_kind = ANY (ARRAY['gift'::text, 'named'::text, 'cost'::text])))
  constraint offer_runs_forward CHECK (((offered_at < closes_at) AND (offered_at <= open_at) AND (open_at <= closes_at)))
  constraint offer_window_in_range CHECK (((window_hours >= 1) AND (window_hours <= 336)))
  CREATE INDEX offer_by_household ON book.offer USING btree (storehouse_id, household_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (goes_to_pantry, open_at) to sheafbook_app

table book.offer_claim row level security
  storehouse_id uuid not null
  offer_id uuid not null
  container_id uuid not null
  household_id uuid not null
  entry_id uuid not null
  claimed_at timestamp with time zone not null
  claimed_by uuid not null
  constraint offer_claim_once PRIMARY KEY (storehouse_id, offer_id, container_id)
  constraint offer_claim_claimed_by_fk FOREIGN KEY (storehouse_id, claimed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint offer_claim_container_fk FOREIGN KEY (storehouse_id, offer_id, container_id) REFERENCES book.offer_container(storehouse_id, offer_id, container_id)
  constraint offer_claim_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint offer_claim_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  CREATE INDEX offer_claim_by_household ON book.offer_claim USING btree (storehouse_id, household_id)
  policy offer_claim_private restrictive for select to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['need-first'::text, 'leaving'::text])) OR ((storehouse_id, offer_id) IN ( SELECT o.storehouse_id,
    o.offer_id
   FROM book.offer o
  WHERE (o.household_id = ( SELECT book.current_household() AS current_household))))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.offer_container row level security
  storehouse_id uuid not null
  offer_id uuid not null
  container_id uuid not null
  grams book.amount not null
  price_minor_units book.amount not null
  offered_at timestamp with time zone not null
  closes_at timestamp with time zone not null
  ended_at timestamp with time zone
  ended_how text
  constraint offer_container_pkey PRIMARY KEY (storehouse_id, offer_id, container_id)
  constraint offer_container_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint offer_container_offer_fk FOREIGN KEY (storehouse_id, offer_id, offered_at, closes_at) REFERENCES book.offer(storehouse_id, offer_id, offered_at, closes_at)
  constraint offer_container_ended_how_known CHECK ((ended_how = ANY (ARRAY['taken'::text, 'taken-back'::text])))
  constraint offer_container_ended_in_time CHECK (((ended_at >= offered_at) AND (ended_at <= closes_at)))
  constraint offer_container_ended_whole CHECK (((ended_at IS NULL) = (ended_how IS NULL)))
  constraint offer_container_holds_some CHECK (((grams)::bigint > 0))
  constraint offer_container_once EXCLUDE USING gist (storehouse_id WITH =, container_id WITH =, tstzrange(offered_at, COALESCE(ended_at, closes_at)) WITH &&)
  CREATE INDEX offer_container_by_container ON book.offer_container USING btree (storehouse_id, container_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (ended_at, ended_how) to sheafbook_app

table book.offer_turn row level security
  storehouse_id uuid not null
  offer_id uuid not null
  household_id uuid not null
  group_no integer not null
  from_at timestamp with time zone not null
  until_at timestamp with time zone not null
  passed_at timestamp with time zone
  constraint offer_turn_pkey PRIMARY KEY (storehouse_id, offer_id, household_id)
  constraint offer_turn_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint offer_turn_offer_fk FOREIGN KEY (storehouse_id, offer_id) REFERENCES book.offer(storehouse_id, offer_id)
  constraint offer_turn_runs_forward CHECK (((group_no > 0) AND (from_at <= until_at)))
  CREATE INDEX offer_turn_by_household ON book.offer_turn USING btree (storehouse_id, household_id)
  policy offer_turn_private restrictive for all to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['need-first'::text, 'leaving'::text]))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (from_at, passed_at, until_at) to sheafbook_app

table book.order_consent row level security
  storehouse_id uuid not null
  buy_id uuid not null
  duty text not null
  person_id uuid not null
  agreed_at timestamp with time zone not null
  constraint order_consent_pkey PRIMARY KEY (storehouse_id, buy_id, duty)
  constraint order_consent_two_logins UNIQUE (storehouse_id, buy_id, person_id)
  constraint order_consent_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint order_consent_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint order_consent_duty_known CHECK ((duty = ANY (ARRAY['coordinator'::text, 'treasurer'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.order_line row level security
  storehouse_id uuid not null
  supplier_order_id uuid not null
  buy_line_id uuid not null
  bag_offer_id uuid not null
  bags integer not null
  goods_minor_units book.amount not null
  constraint order_line_pkey PRIMARY KEY (storehouse_id, supplier_order_id, bag_offer_id)
  constraint order_line_buy_line_fk FOREIGN KEY (storehouse_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_line_id)
  constraint order_line_offer_fk FOREIGN KEY (storehouse_id, bag_offer_id) REFERENCES book.bag_offer(storehouse_id, bag_offer_id)
  constraint order_line_order_fk FOREIGN KEY (storehouse_id, supplier_order_id) REFERENCES book.supplier_order(storehouse_id, supplier_order_id)
  constraint order_line_bags_positive CHECK ((bags > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.owner row level security
  storehouse_id uuid not null
  owner_id uuid default uuidv7() not null
  kind text not null
  constraint owner_pkey PRIMARY KEY (storehouse_id, owner_id)
  constraint owner_id_and_kind UNIQUE (storehouse_id, owner_id, kind)
  constraint owner_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint owner_kind_known CHECK ((kind = ANY (ARRAY['household'::text, 'common'::text, 'unassigned'::text, 'supplier'::text])))
  CREATE UNIQUE INDEX owner_single_kinds ON book.owner USING btree (storehouse_id, kind) WHERE (kind = ANY (ARRAY['common'::text, 'unassigned'::text]))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.packing_bag row level security
  storehouse_id uuid not null
  packing_session_id uuid not null
  bag_id uuid not null
  household_id uuid not null
  brought_grams book.amount not null
  brought_by uuid not null
  brought_at timestamp with time zone not null
  left_grams book.amount
  difference_because text default ''::text not null
  was_tenths integer
  is_tenths integer
  constraint packing_bag_pkey PRIMARY KEY (storehouse_id, packing_session_id, bag_id, household_id)
  constraint packing_bag_bag_fk FOREIGN KEY (storehouse_id, bag_id) REFERENCES book.bag(storehouse_id, bag_id)
  constraint packing_bag_brought_by_fk FOREIGN KEY (storehouse_id, brought_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_bag_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint packing_bag_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint packing_bag_holds_something CHECK (((brought_grams)::bigint > 0))
  constraint packing_bag_moisture_of_grain CHECK ((((was_tenths >= 0) AND (was_tenths <= 500)) AND ((is_tenths >= 0) AND (is_tenths <= 500))))
  constraint packing_bag_moisture_whole CHECK ((num_nonnulls(was_tenths, is_tenths) = ANY (ARRAY[0, 2])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (difference_because, is_tenths, left_grams, was_tenths) to sheafbook_app

table book.packing_hand row level security
  storehouse_id uuid not null
  packing_session_id uuid not null
  person_id uuid not null
  state text not null
  may_seam boolean not null
  may_lift boolean not null
  said_at timestamp with time zone not null
  seated_only boolean default false not null
  is_under_16 boolean default false not null
  constraint packing_hand_pkey PRIMARY KEY (storehouse_id, packing_session_id, person_id)
  constraint packing_hand_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_hand_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint packing_hand_old_enough_to_seam CHECK ((NOT (is_under_16 AND may_seam)))
  constraint packing_hand_state_known CHECK ((state = ANY (ARRAY['coming'::text, 'came'::text, 'stayed-away'::text, 'taken-back'::text])))
  CREATE INDEX packing_hand_by_person ON book.packing_hand USING btree (storehouse_id, person_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (is_under_16, may_lift, may_seam, said_at, seated_only, state) to sheafbook_app

table book.packing_loss row level security
  storehouse_id uuid not null
  entry_id uuid not null
  packing_session_id uuid not null
  bag_id uuid not null
  household_id uuid not null
  lost_at timestamp with time zone not null
  recorded_at timestamp with time zone not null
  constraint packing_loss_pkey PRIMARY KEY (storehouse_id, entry_id)
  constraint packing_loss_bag_brought_fk FOREIGN KEY (storehouse_id, packing_session_id, bag_id, household_id) REFERENCES book.packing_bag(storehouse_id, packing_session_id, bag_id, household_id)
  constraint packing_loss_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint packing_loss_lost_before_recorded CHECK ((lost_at <= recorded_at))
  CREATE INDEX packing_loss_by_session ON book.packing_loss USING btree (storehouse_id, packing_session_id, lost_at)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.packing_mix row level security
  storehouse_id uuid not null
  packing_mix_id uuid default uuidv7() not null
  packing_session_id uuid not null
  line smallint not null
  lot_id uuid not null
  container_kind_id uuid not null
  treatment text not null
  grams_each book.amount not null
  wish_ids uuid[] not null
  shares jsonb not null
  entry_id uuid not null
  posted_by uuid not null
  posted_at timestamp with time zone not null
  undone_entry_id uuid
  constraint packing_mix_pkey PRIMARY KEY (storehouse_id, packing_mix_id)
  constraint packing_mix_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint packing_mix_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint packing_mix_lot_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.lot(storehouse_id, lot_id)
  constraint packing_mix_posted_by_fk FOREIGN KEY (storehouse_id, posted_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_mix_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint packing_mix_undone_entry_fk FOREIGN KEY (storehouse_id, undone_entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint packing_mix_of_several CHECK (((cardinality(wish_ids) > 1) AND ((line >= 1) AND (line <= 20))))
  CREATE UNIQUE INDEX packing_mix_stands_once ON book.packing_mix USING btree (storehouse_id, packing_session_id, line, lot_id, container_kind_id, treatment, grams_each) WHERE (undone_entry_id IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (undone_entry_id) to sheafbook_app

table book.packing_pour row level security
  storehouse_id uuid not null
  packing_pour_id uuid default uuidv7() not null
  packing_session_id uuid not null
  line smallint not null
  serial integer not null
  household_id uuid not null
  bag_id uuid not null
  container_id uuid not null
  target_grams book.amount not null
  grams book.amount not null
  treatment text not null
  entry_id uuid not null
  poured_by uuid not null
  poured_at timestamp with time zone not null
  recorded_at timestamp with time zone not null
  undone_entry_id uuid
  absorber_millilitres integer
  weighed_how text default 'net'::text not null
  gross_grams bigint
  tare_grams bigint
  container_tare_id uuid
  constraint packing_pour_pkey PRIMARY KEY (storehouse_id, packing_pour_id)
  constraint packing_pour_container_once UNIQUE (storehouse_id, container_id)
  constraint packing_pour_serial_once UNIQUE (storehouse_id, packing_session_id, line, serial)
  constraint packing_pour_bag_brought_fk FOREIGN KEY (storehouse_id, packing_session_id, bag_id, household_id) REFERENCES book.packing_bag(storehouse_id, packing_session_id, bag_id, household_id)
  constraint packing_pour_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint packing_pour_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint packing_pour_poured_by_fk FOREIGN KEY (storehouse_id, poured_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_pour_tare_fk FOREIGN KEY (storehouse_id, container_tare_id) REFERENCES book.container_tare(storehouse_id, container_tare_id)
  constraint packing_pour_undone_entry_fk FOREIGN KEY (storehouse_id, undone_entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint packing_pour_absorber_takes_some CHECK (((absorber_millilitres IS NULL) OR ((absorber_millilitres > 0) AND (treatment = 'oxygen-absorber'::text))))
  constraint packing_pour_names_its_tare CHECK (((weighed_how = 'tare-of-kind'::text) = (container_tare_id IS NOT NULL)))
  constraint packing_pour_net_adds_up CHECK ((((tare_grams >= 1) AND (tare_grams <= 100000)) AND ((gross_grams - tare_grams) = (grams)::bigint)))
  constraint packing_pour_serial_counted CHECK ((((line >= 1) AND (line <= 20)) AND (serial > 0)))
  constraint packing_pour_weighed_known CHECK ((weighed_how = ANY (ARRAY['net'::text, 'tare-of-kind'::text, 'own-tare'::text])))
  constraint packing_pour_weighed_whole CHECK ((num_nonnulls(gross_grams, tare_grams) =
CASE
    WHEN (weighed_how = 'net'::text) THEN 0
    ELSE 2
END))
  constraint packing_pour_weighs_something CHECK ((((grams)::bigint > 0) AND ((target_grams)::bigint > 0)))
  CREATE INDEX packing_pour_by_entry ON book.packing_pour USING btree (storehouse_id, entry_id)
  CREATE TRIGGER packing_pour_joins_holds AFTER INSERT ON book.packing_pour FOR EACH STATEMENT EXECUTE FUNCTION book.extend_holds()
  CREATE CONSTRAINT TRIGGER packing_pour_joins_holds_at_last AFTER INSERT ON book.packing_pour DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION book.extend_holds_at_last()
  CREATE TRIGGER packing_pour_serial_is_new AFTER INSERT OR UPDATE OF packing_session_id, line, serial ON book.packing_pour FOR EACH ROW EXECUTE FUNCTION book.refuse_serial_twice()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (undone_entry_id) to sheafbook_app

table book.packing_queue row level security
  storehouse_id uuid not null
  packing_queue_id uuid default uuidv7() not null
  packing_session_id uuid not null
  line smallint not null
  station text not null
  waiting smallint not null
  said_by uuid not null
  said_at timestamp with time zone not null
  constraint packing_queue_pkey PRIMARY KEY (storehouse_id, packing_queue_id)
  constraint packing_queue_said_by_fk FOREIGN KEY (storehouse_id, said_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_queue_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint packing_queue_in_range CHECK ((((line >= 1) AND (line <= 20)) AND ((waiting >= 0) AND (waiting <= 999))))
  constraint packing_queue_station_known CHECK ((station = ANY (ARRAY['fill'::text, 'weigh'::text, 'absorber'::text, 'seam'::text, 'label'::text, 'box'::text])))
  CREATE INDEX packing_queue_by_session ON book.packing_queue USING btree (storehouse_id, packing_session_id, said_at)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.packing_session row level security
  storehouse_id uuid not null
  packing_session_id uuid default uuidv7() not null
  name text not null
  place text default ''::text not null
  starts_at timestamp with time zone not null
  ends_at timestamp with time zone not null
  lines smallint not null
  people_a_line smallint not null
  stations jsonb not null
  setup_minutes smallint not null
  break_minutes smallint not null
  clean_down_minutes smallint not null
  line_fee_minor_units book.amount not null
  stage text default 'open'::text not null
  version integer default 1 not null
  created_by uuid not null
  created_at timestamp with time zone not null
  signed_by uuid
  signed_at timestamp with time zone
  ended_because text default ''::text not null
  started_at timestamp with time zone
  constraint packing_session_pkey PRIMARY KEY (storehouse_id, packing_session_id)
  constraint packing_session_name_once UNIQUE (storehouse_id, name)
  constraint packing_session_created_by_fk FOREIGN KEY (storehouse_id, created_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_session_signed_by_fk FOREIGN KEY (storehouse_id, signed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_session_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint packing_session_lines_in_range CHECK (((lines >= 1) AND (lines <= 20)))
  constraint packing_session_minutes_in_range CHECK ((((setup_minutes >= 0) AND (setup_minutes <= 600)) AND ((break_minutes >= 0) AND (break_minutes <= 600)) AND ((clean_down_minutes >= 0) AND (clean_down_minutes <= 600))))
  constraint packing_session_named CHECK ((name ~ '\S'::text))
  constraint packing_session_people_in_range CHECK (((people_a_line >= 1) AND (people_a_line <= 30)))
  constraint packing_session_signed_whole CHECK ((((signed_by IS NULL) = (signed_at IS NULL)) AND ((stage = ANY (ARRAY['signed'::text, 'settled'::text])) = (signed_by IS NOT NULL))))
  constraint packing_session_stage_known CHECK ((stage = ANY (ARRAY['open'::text, 'running'::text, 'signed'::text, 'settled'::text, 'called-off'::text])))
  constraint packing_session_within_a_day CHECK (((ends_at > starts_at) AND (ends_at <= (starts_at + '24:00:00'::interval))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (break_minutes, clean_down_minutes, ended_because, ends_at, line_fee_minor_units, lines, name, people_a_line, place, setup_minutes, signed_at, signed_by, stage, started_at, starts_at, stations, version) to sheafbook_app

table book.packing_slot row level security
  storehouse_id uuid not null
  packing_slot_id uuid default uuidv7() not null
  packing_session_id uuid not null
  household_id uuid not null
  line smallint
  starts_at timestamp with time zone not null
  ends_at timestamp with time zone not null
  state text not null
  asked_at timestamp with time zone not null
  asked_by uuid not null
  came_at timestamp with time zone
  freed_at timestamp with time zone
  constraint packing_slot_pkey PRIMARY KEY (storehouse_id, packing_slot_id)
  constraint packing_slot_asked_by_fk FOREIGN KEY (storehouse_id, asked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_slot_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint packing_slot_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint packing_slot_has_its_line CHECK (((state <> 'booked'::text) OR (line IS NOT NULL)))
  constraint packing_slot_not_come_whole CHECK (((state <> 'not-come'::text) OR ((freed_at IS NOT NULL) AND (came_at IS NULL))))
  constraint packing_slot_state_known CHECK ((state = ANY (ARRAY['booked'::text, 'waiting'::text, 'given-back'::text, 'not-come'::text])))
  constraint packing_slot_takes_time CHECK ((ends_at > starts_at))
  constraint packing_slot_line_at_a_time EXCLUDE USING gist (storehouse_id WITH =, packing_session_id WITH =, line WITH =, tstzrange(starts_at, ends_at) WITH &&) WHERE ((state = 'booked'::text))
  CREATE UNIQUE INDEX packing_slot_one_open ON book.packing_slot USING btree (storehouse_id, packing_session_id, household_id) WHERE (state = ANY (ARRAY['booked'::text, 'waiting'::text]))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (asked_at, came_at, ends_at, freed_at, line, starts_at, state) to sheafbook_app

table book.packing_stood row level security
  storehouse_id uuid not null
  packing_session_id uuid not null
  person_id uuid not null
  station text not null
  spells smallint not null
  constraint packing_stood_pkey PRIMARY KEY (storehouse_id, packing_session_id, person_id, station)
  constraint packing_stood_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_stood_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint packing_stood_counts_some CHECK ((spells > 0))
  constraint packing_stood_station_known CHECK ((station = ANY (ARRAY['fill'::text, 'weigh'::text, 'absorber'::text, 'seam'::text, 'label'::text, 'box'::text])))
  CREATE INDEX packing_stood_by_person ON book.packing_stood USING btree (storehouse_id, person_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.packing_wish row level security
  storehouse_id uuid not null
  packing_wish_id uuid default uuidv7() not null
  packing_session_id uuid not null
  household_id uuid not null
  food_id uuid not null
  container_kind_id uuid not null
  treatment text not null
  containers integer not null
  grams_each book.amount not null
  "position" integer not null
  entered_by uuid not null
  may_mix boolean default false not null
  constraint packing_wish_pkey PRIMARY KEY (storehouse_id, packing_wish_id)
  constraint packing_wish_place_once UNIQUE (storehouse_id, packing_session_id, household_id, "position")
  constraint packing_wish_entered_by_fk FOREIGN KEY (storehouse_id, entered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint packing_wish_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  constraint packing_wish_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint packing_wish_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint packing_wish_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint packing_wish_counts_something CHECK ((((containers >= 1) AND (containers <= 5000)) AND ((grams_each)::bigint > 0)))
  constraint packing_wish_treatment_known CHECK ((treatment = ANY (ARRAY['oxygen-absorber'::text, 'dry-ice'::text, 'vacuum'::text, 'nitrogen-flush'::text, 'freeze-thaw-freeze'::text, 'food-grade-earth'::text, 'none'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.pantry row level security
  storehouse_id uuid not null
  pantry_id uuid default uuidv7() not null
  name text not null
  address text not null
  time_zone text not null
  contact_duty text not null
  contact text not null
  distance_metres integer not null
  is_retired boolean default false not null
  card_version integer default 1 not null
  version integer default 1 not null
  constraint pantry_pkey PRIMARY KEY (storehouse_id, pantry_id)
  constraint pantry_name_once UNIQUE (storehouse_id, name)
  constraint pantry_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint pantry_named CHECK ((name ~ '\S'::text))
  constraint pantry_not_behind_us CHECK ((distance_metres >= 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (address, card_version, contact, contact_duty, distance_metres, is_retired, name, time_zone, version) to sheafbook_app

table book.pantry_card row level security
  storehouse_id uuid not null
  pantry_id uuid not null
  card_version integer not null
  accepts_maker_sealed boolean
  accepts_home_packed boolean
  accepts_licensed_kitchen boolean
  accepts_reduced_oxygen boolean
  most_days_past_best integer
  past_best_classes text[]
  least_life_days integer not null
  container_kind_codes text[]
  label_facts text[] not null
  food_codes_wanted text[]
  food_codes_not_wanted text[] not null
  allergens_not_taken text[] not null
  wants_allergens_apart boolean
  takes_cold boolean
  gives_receipt boolean
  most_grams_per_visit bigint
  most_grams_per_week bigint
  note text not null
  confirmed_on date not null
  confirmed_by text not null
  written_by uuid not null
  written_at timestamp with time zone not null
  constraint pantry_card_pkey PRIMARY KEY (storehouse_id, pantry_id, card_version)
  constraint pantry_card_pantry_fk FOREIGN KEY (storehouse_id, pantry_id) REFERENCES book.pantry(storehouse_id, pantry_id)
  constraint pantry_card_written_by_fk FOREIGN KEY (storehouse_id, written_by) REFERENCES book.person(storehouse_id, person_id)
  constraint pantry_card_confirmed_by_someone CHECK ((confirmed_by ~ '\S'::text))
  constraint pantry_card_days_whole CHECK (((least_life_days >= 0) AND (most_days_past_best > 0)))
  constraint pantry_card_masses_positive CHECK (((most_grams_per_visit > 0) AND (most_grams_per_week > 0)))
  constraint pantry_card_numbered CHECK ((card_version >= 1))
  constraint pantry_card_takes_a_food CHECK (((food_codes_wanted IS NULL) OR (NOT (food_codes_wanted <@ food_codes_not_wanted))))
  constraint pantry_card_takes_a_kind CHECK ((container_kind_codes <> '{}'::text[]))
  constraint pantry_card_takes_a_seal CHECK ((COALESCE(accepts_maker_sealed, false) OR COALESCE(accepts_home_packed, false) OR COALESCE(accepts_licensed_kitchen, false)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.pantry_opening row level security
  storehouse_id uuid not null
  pantry_id uuid not null
  card_version integer not null
  weekday smallint not null
  opens_at text not null
  closes_at text not null
  constraint pantry_opening_pkey PRIMARY KEY (storehouse_id, pantry_id, card_version, weekday, opens_at)
  constraint pantry_opening_card_fk FOREIGN KEY (storehouse_id, pantry_id, card_version) REFERENCES book.pantry_card(storehouse_id, pantry_id, card_version)
  constraint pantry_opening_hours_known CHECK (((opens_at ~ '^([01]\d|2[0-3]):[0-5]\d$'::text) AND (closes_at ~ '^([01]\d|2[0-3]):[0-5]\d$'::text) AND (opens_at < closes_at)))
  constraint pantry_opening_weekday_known CHECK (((weekday >= 0) AND (weekday <= 6)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.paper row level security
  storehouse_id uuid not null
  paper_id uuid default uuidv7() not null
  paper_no bigint not null
  paper_code text not null
  kind text not null
  buy_id uuid
  household_id uuid
  subject_id uuid
  as_of_entry_no bigint not null
  printed_on date not null
  printed_by uuid not null
  printed_at timestamp with time zone not null
  detail text default ''::text not null
  constraint paper_pkey PRIMARY KEY (storehouse_id, paper_id)
  constraint paper_code_once UNIQUE (storehouse_id, paper_code)
  constraint paper_no_once UNIQUE (storehouse_id, paper_no)
  constraint paper_printing_once UNIQUE NULLS NOT DISTINCT (storehouse_id, kind, buy_id, household_id, subject_id, detail, as_of_entry_no, printed_on, printed_by)
  constraint paper_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint paper_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint paper_printed_by_fk FOREIGN KEY (storehouse_id, printed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint paper_kind_known CHECK ((kind = ANY (ARRAY['buy-sheet'::text, 'pledge-slip'::text, 'quote-comparison'::text, 'order'::text, 'landing-sheet'::text, 'claim-letter'::text, 'split-sheet'::text, 'statement'::text, 'who-owes'::text, 'month'::text, 'run-sheet'::text, 'seam-log'::text, 'loan-slip'::text, 'quarantine-tag'::text, 'gift-manifest'::text, 'offer-notice'::text, 'transfer-slip'::text, 'gift-year'::text, 'handover'::text, 'shelf-list'::text, 'eat-first-list'::text, 'recall-notice'::text, 'year-review'::text, 'inspection-sheet'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.period_close row level security
  storehouse_id uuid not null
  closed_through date not null
  closed_by uuid not null
  closed_at timestamp with time zone not null
  entry_count integer
  digest_sha256 text
  constraint period_close_pkey PRIMARY KEY (storehouse_id, closed_through)
  constraint period_close_closed_by_fk FOREIGN KEY (storehouse_id, closed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint period_close_digest_is_sha256 CHECK ((digest_sha256 ~ '^[0-9a-f]{64}$'::text))
  constraint period_close_digest_whole CHECK (((entry_count IS NULL) = (digest_sha256 IS NULL)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.period_signature row level security
  storehouse_id uuid not null
  closed_through date not null
  duty text not null
  person_id uuid not null
  signed_at timestamp with time zone not null
  digest_sha256 text not null
  remarks text default ''::text not null
  constraint period_signature_once_a_duty PRIMARY KEY (storehouse_id, closed_through, duty)
  constraint period_signature_two_people UNIQUE (storehouse_id, closed_through, person_id)
  constraint period_signature_close_fk FOREIGN KEY (storehouse_id, closed_through) REFERENCES book.period_close(storehouse_id, closed_through)
  constraint period_signature_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint period_signature_duty_known CHECK ((duty = ANY (ARRAY['reviewer'::text, 'treasurer'::text, 'coordinator'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.person row level security
  storehouse_id uuid not null
  person_id uuid default uuidv7() not null
  login_id uuid
  household_id uuid
  name text not null
  joined_on date not null
  left_on date
  constraint person_pkey PRIMARY KEY (storehouse_id, person_id)
  constraint person_login_once UNIQUE (storehouse_id, login_id)
  constraint person_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint person_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint person_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  CREATE INDEX person_by_login ON book.person USING btree (login_id)
  CREATE TRIGGER household_still_here BEFORE INSERT ON book.person FOR EACH ROW EXECUTE FUNCTION book.refuse_left_household()
  policy my_storehouses for select to public using (((( SELECT book.current_storehouse() AS current_storehouse) IS NULL) AND (login_id = ( SELECT book.current_login() AS current_login))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (household_id, left_on, login_id, name) to sheafbook_app

table book.photo row level security
  storehouse_id uuid not null
  photo_id uuid default uuidv7() not null
  buy_id uuid
  bag_id uuid
  claim_id uuid
  delivery_id uuid
  content bytea not null
  width_pixels integer not null
  height_pixels integer not null
  note text default ''::text not null
  added_by uuid not null
  added_at timestamp with time zone not null
  equipment_item_id uuid
  equipment_part_id uuid
  equipment_unit_id uuid
  loan_id uuid
  moment text
  constraint photo_pkey PRIMARY KEY (storehouse_id, photo_id)
  constraint photo_added_by_fk FOREIGN KEY (storehouse_id, added_by) REFERENCES book.person(storehouse_id, person_id)
  constraint photo_bag_fk FOREIGN KEY (storehouse_id, buy_id, bag_id) REFERENCES book.bag(storehouse_id, buy_id, bag_id)
  constraint photo_claim_fk FOREIGN KEY (storehouse_id, buy_id, claim_id) REFERENCES book.claim(storehouse_id, buy_id, claim_id)
  constraint photo_delivery_fk FOREIGN KEY (storehouse_id, buy_id, delivery_id) REFERENCES book.delivery(storehouse_id, buy_id, delivery_id)
  constraint photo_item_fk FOREIGN KEY (storehouse_id, equipment_item_id) REFERENCES book.equipment_item(storehouse_id, equipment_item_id)
  constraint photo_loan_fk FOREIGN KEY (storehouse_id, equipment_unit_id, loan_id) REFERENCES book.loan(storehouse_id, equipment_unit_id, loan_id)
  constraint photo_part_fk FOREIGN KEY (storehouse_id, equipment_item_id, equipment_part_id) REFERENCES book.equipment_part(storehouse_id, equipment_item_id, equipment_part_id)
  constraint photo_unit_fk FOREIGN KEY (storehouse_id, equipment_item_id, equipment_unit_id) REFERENCES book.equipment_unit(storehouse_id, equipment_item_id, equipment_unit_id)
  constraint photo_has_size CHECK (((width_pixels > 0) AND (height_pixels > 0)))
  constraint photo_is_jpeg CHECK ((SUBSTRING(content FROM 1 FOR 3) = '\xffd8ff'::bytea))
  constraint photo_moment_known CHECK ((moment = ANY (ARRAY['out'::text, 'back'::text])))
  constraint photo_of_2_mebibytes CHECK (((octet_length(content) >= 4) AND (octet_length(content) <= ((2 * 1024) * 1024))))
  constraint photo_of_loan_whole CHECK (((num_nonnulls(equipment_unit_id, loan_id, moment) = ANY (ARRAY[0, 3])) AND ((loan_id IS NULL) OR (equipment_item_id IS NOT NULL))))
  constraint photo_of_part_or_loan CHECK (((num_nonnulls(equipment_part_id, loan_id) <= 1) AND ((equipment_part_id IS NULL) OR (equipment_item_id IS NOT NULL))))
  constraint photo_shows_one_thing CHECK (((num_nonnulls(bag_id, claim_id, delivery_id, equipment_item_id) = 1) AND ((buy_id IS NULL) = (equipment_item_id IS NOT NULL))))
  CREATE INDEX photo_by_buy ON book.photo USING btree (storehouse_id, buy_id)
  CREATE INDEX photo_by_item ON book.photo USING btree (storehouse_id, equipment_item_id)
  CREATE INDEX photo_by_loan ON book.photo USING btree (storehouse_id, loan_id)
  CREATE UNIQUE INDEX photo_once ON book.photo USING btree (storehouse_id, bag_id, claim_id, delivery_id, equipment_item_id, equipment_part_id, loan_id, moment, sha256(content)) NULLS NOT DISTINCT
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.pick_up row level security
  storehouse_id uuid not null
  pick_up_id uuid default uuidv7() not null
  buy_id uuid not null
  household_id uuid not null
  starts_at timestamp with time zone
  ends_at timestamp with time zone
  signed_by text default ''::text not null
  handed_over_by uuid
  collected_at timestamp with time zone
  version integer default 1 not null
  constraint pick_up_pkey PRIMARY KEY (storehouse_id, pick_up_id)
  constraint pick_up_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint pick_up_handed_over_by_fk FOREIGN KEY (storehouse_id, handed_over_by) REFERENCES book.person(storehouse_id, person_id)
  constraint pick_up_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint pick_up_signed CHECK (((collected_at IS NULL) OR (signed_by ~ '\S'::text)))
  constraint pick_up_window_in_order CHECK ((((starts_at IS NULL) = (ends_at IS NULL)) AND (starts_at < ends_at)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (collected_at, ends_at, handed_over_by, signed_by, starts_at, version) to sheafbook_app

table book.pick_up_piece row level security
  storehouse_id uuid not null
  pick_up_id uuid not null
  bag_id uuid not null
  grams book.amount not null
  constraint pick_up_piece_pkey PRIMARY KEY (storehouse_id, pick_up_id, bag_id)
  constraint pick_up_piece_bag_fk FOREIGN KEY (storehouse_id, bag_id) REFERENCES book.bag(storehouse_id, bag_id)
  constraint pick_up_piece_pick_up_fk FOREIGN KEY (storehouse_id, pick_up_id) REFERENCES book.pick_up(storehouse_id, pick_up_id)
  constraint pick_up_piece_positive CHECK (((grams)::bigint > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.place row level security
  storehouse_id uuid not null
  place_id uuid default uuidv7() not null
  household_id uuid
  name text not null
  kind text not null
  is_lit boolean
  is_damp boolean
  is_rodent_proof boolean
  version integer default 1 not null
  most_grams bigint
  constraint place_pkey PRIMARY KEY (storehouse_id, place_id)
  constraint place_name_once UNIQUE NULLS NOT DISTINCT (storehouse_id, household_id, name)
  constraint place_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint place_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint place_carries_something CHECK (((most_grams >= 1) AND (most_grams <= 1000000000)))
  constraint place_kind_known CHECK ((kind = ANY (ARRAY['cellar'::text, 'pantry'::text, 'kitchen'::text, 'room'::text, 'garage'::text, 'shed'::text, 'attic'::text, 'cold-room'::text, 'freezer'::text, 'other'::text])))
  constraint place_named CHECK ((name ~ '\S'::text))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  policy place_private restrictive for all to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['leaving'::text, 'coverage-totals'::text, 'need-first'::text])))) with check (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household))))
  grant delete, insert, select, update (is_damp, is_lit, is_rodent_proof, kind, most_grams, name, version) to sheafbook_app

table book.place_log row level security
  storehouse_id uuid not null
  place_log_id uuid default uuidv7() not null
  place_id uuid not null
  file_name text not null
  file_hash text not null
  first_on date not null
  last_on date not null
  readings integer not null
  bad_lines integer not null
  taken_by uuid not null
  taken_at timestamp with time zone not null
  constraint place_log_pkey PRIMARY KEY (storehouse_id, place_log_id)
  constraint place_log_place_fk FOREIGN KEY (storehouse_id, place_id) REFERENCES book.place(storehouse_id, place_id) ON DELETE CASCADE
  constraint place_log_taken_by_fk FOREIGN KEY (storehouse_id, taken_by) REFERENCES book.person(storehouse_id, person_id)
  constraint place_log_counted CHECK (((readings > 0) AND (bad_lines >= 0)))
  constraint place_log_runs_forward CHECK ((first_on <= last_on))
  CREATE INDEX place_log_by_place ON book.place_log USING btree (storehouse_id, place_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  policy place_log_private restrictive for all to public using (((storehouse_id, place_id) IN ( SELECT place.storehouse_id,
    place.place_id
   FROM book.place)))
  grant delete, insert, select to sheafbook_app

table book.place_warmth row level security
  storehouse_id uuid not null
  place_id uuid not null
  from_on date not null
  to_on date not null
  age_tenths integer not null
  mean_tenths integer not null
  coldest_tenths integer not null
  warmest_tenths integer not null
  readings integer not null
  place_log_id uuid
  constraint place_warmth_pkey PRIMARY KEY (storehouse_id, place_id, from_on)
  constraint place_warmth_log_fk FOREIGN KEY (storehouse_id, place_log_id) REFERENCES book.place_log(storehouse_id, place_log_id) ON DELETE CASCADE
  constraint place_warmth_place_fk FOREIGN KEY (storehouse_id, place_id) REFERENCES book.place(storehouse_id, place_id) ON DELETE CASCADE
  constraint place_warmth_of_a_log CHECK (((place_log_id IS NULL) = (readings = 0)))
  constraint place_warmth_possible CHECK ((((coldest_tenths >= '-600'::integer) AND (coldest_tenths <= 700)) AND ((warmest_tenths >= '-600'::integer) AND (warmest_tenths <= 700)) AND (coldest_tenths <= mean_tenths) AND (mean_tenths <= warmest_tenths) AND ((age_tenths >= '-600'::integer) AND (age_tenths <= 700))))
  constraint place_warmth_runs_forward CHECK ((from_on < to_on))
  constraint place_warmth_once EXCLUDE USING gist (storehouse_id WITH =, place_id WITH =, daterange(from_on, to_on) WITH &&)
  CREATE INDEX place_warmth_by_log ON book.place_warmth USING btree (storehouse_id, place_log_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  policy place_warmth_private restrictive for all to public using ((((storehouse_id, place_id) IN ( SELECT p.storehouse_id,
    p.place_id
   FROM book.place p)) OR (( SELECT book.current_task() AS current_task) = 'kept-history'::text))) with check (((storehouse_id, place_id) IN ( SELECT p.storehouse_id,
    p.place_id
   FROM book.place p)))
  grant delete, insert, select to sheafbook_app

table book.pledge row level security
  storehouse_id uuid not null
  pledge_id uuid default uuidv7() not null
  buy_id uuid not null
  buy_line_id uuid not null
  household_id uuid not null
  least_grams book.amount not null
  wanted_grams book.amount not null
  most_grams book.amount not null
  whole_bags boolean not null
  substitute_line_id uuid
  as_typed text default ''::text not null
  pledged_at timestamp with time zone not null
  ranked_at timestamp with time zone not null
  entered_by uuid not null
  is_entered_for boolean default false not null
  withdrawn_at timestamp with time zone
  version integer default 1 not null
  constraint pledge_pkey PRIMARY KEY (storehouse_id, pledge_id)
  constraint pledge_of_household UNIQUE (storehouse_id, pledge_id, household_id)
  constraint pledge_entered_by_fk FOREIGN KEY (storehouse_id, entered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint pledge_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint pledge_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint pledge_substitute_fk FOREIGN KEY (storehouse_id, buy_id, substitute_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint pledge_in_order CHECK ((((least_grams)::bigint <= (wanted_grams)::bigint) AND ((wanted_grams)::bigint <= (most_grams)::bigint) AND ((wanted_grams)::bigint > 0)))
  constraint pledge_substitute_is_another CHECK ((substitute_line_id <> buy_line_id))
  CREATE INDEX pledge_by_buy ON book.pledge USING btree (storehouse_id, buy_id)
  CREATE UNIQUE INDEX pledge_once_per_line ON book.pledge USING btree (storehouse_id, buy_line_id, household_id) WHERE (withdrawn_at IS NULL)
  CREATE TRIGGER household_still_here BEFORE INSERT ON book.pledge FOR EACH ROW EXECUTE FUNCTION book.refuse_left_household()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (as_typed, entered_by, is_entered_for, least_grams, most_grams, ranked_at, substitute_line_id, version, wanted_grams, whole_bags, withdrawn_at) to sheafbook_app

table book.pledge_ceiling row level security
  storehouse_id uuid not null
  pledge_id uuid not null
  household_id uuid not null
  ceiling_minor_units book.amount not null
  per_grams book.amount not null
  constraint pledge_ceiling_pkey PRIMARY KEY (storehouse_id, pledge_id)
  constraint pledge_ceiling_pledge_fk FOREIGN KEY (storehouse_id, pledge_id, household_id) REFERENCES book.pledge(storehouse_id, pledge_id, household_id)
  constraint pledge_ceiling_per_something CHECK (((per_grams)::bigint > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  policy pledge_ceiling_private restrictive for all to public using (((household_id = ( SELECT book.current_household() AS current_household)) OR (( SELECT book.current_task() AS current_task) = ANY (ARRAY['fill'::text, 'review'::text, 'leaving'::text])))) with check ((household_id = ( SELECT book.current_household() AS current_household)))
  grant delete, insert, select, update to sheafbook_app

table book.price_break row level security
  storehouse_id uuid not null
  bag_offer_id uuid not null
  from_bags integer not null
  bag_price_minor_units book.amount not null
  constraint price_break_pkey PRIMARY KEY (storehouse_id, bag_offer_id, from_bags)
  constraint price_break_offer_fk FOREIGN KEY (storehouse_id, bag_offer_id) REFERENCES book.bag_offer(storehouse_id, bag_offer_id)
  constraint price_break_from_positive CHECK (((from_bags >= 1) AND (from_bags <= 100000)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.private_read row level security
  storehouse_id uuid not null
  private_read_id uuid default uuidv7() not null
  household_id uuid not null
  person_id uuid not null
  what text not null
  purpose text not null
  read_at timestamp with time zone not null
  constraint private_read_pkey PRIMARY KEY (storehouse_id, private_read_id)
  constraint private_read_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint private_read_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  CREATE INDEX private_read_by_household ON book.private_read USING btree (storehouse_id, household_id, private_read_id DESC)
  policy housekeeping for all to sheafbook_housekeeping using (true)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app
  grant delete, select to sheafbook_housekeeping

table book.quote row level security
  storehouse_id uuid not null
  quote_id uuid default uuidv7() not null
  buy_id uuid not null
  supplier_id uuid not null
  reference text default ''::text not null
  valid_until date not null
  minimum_goods_minor_units book.amount default 0 not null
  minimum_grams book.amount default 0 not null
  freight_free_from_minor_units book.amount
  lead_days integer default 0 not null
  crop_year integer
  moisture_note text default ''::text not null
  foreign_price_note text default ''::text not null
  entered_by uuid not null
  entered_at timestamp with time zone not null
  withdrawn_at timestamp with time zone
  version integer default 1 not null
  constraint quote_pkey PRIMARY KEY (storehouse_id, quote_id)
  constraint quote_of_buy UNIQUE (storehouse_id, buy_id, quote_id)
  constraint quote_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint quote_entered_by_fk FOREIGN KEY (storehouse_id, entered_by) REFERENCES book.person(storehouse_id, person_id)
  constraint quote_supplier_fk FOREIGN KEY (storehouse_id, supplier_id) REFERENCES book.supplier(storehouse_id, supplier_id)
  constraint quote_crop_year_in_range CHECK (((crop_year >= 1990) AND (crop_year <= 2200)))
  constraint quote_lead_in_range CHECK (((lead_days >= 0) AND (lead_days <= 365)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (crop_year, foreign_price_note, freight_free_from_minor_units, lead_days, minimum_goods_minor_units, minimum_grams, moisture_note, reference, valid_until, version, withdrawn_at) to sheafbook_app

table book.quote_freight_step row level security
  storehouse_id uuid not null
  quote_id uuid not null
  from_grams book.amount not null
  minor_units book.amount not null
  constraint quote_freight_step_pkey PRIMARY KEY (storehouse_id, quote_id, from_grams)
  constraint quote_freight_step_quote_fk FOREIGN KEY (storehouse_id, quote_id) REFERENCES book.quote(storehouse_id, quote_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.re_can row level security
  storehouse_id uuid not null
  re_can_id uuid default uuidv7() not null
  old_container_id uuid not null
  new_container_id uuid not null
  household_id uuid not null
  grams book.amount not null
  spilled_grams book.amount not null
  note text default ''::text not null
  entry_id uuid not null
  done_by uuid not null
  done_at timestamp with time zone not null
  undone_entry_id uuid
  packing_session_id uuid not null
  line smallint not null
  serial integer not null
  constraint re_can_pkey PRIMARY KEY (storehouse_id, re_can_id)
  constraint re_can_new_once UNIQUE (storehouse_id, new_container_id)
  constraint re_can_serial_once UNIQUE (storehouse_id, packing_session_id, line, serial)
  constraint re_can_done_by_fk FOREIGN KEY (storehouse_id, done_by) REFERENCES book.person(storehouse_id, person_id)
  constraint re_can_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint re_can_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint re_can_new_fk FOREIGN KEY (storehouse_id, new_container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint re_can_old_fk FOREIGN KEY (storehouse_id, old_container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint re_can_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint re_can_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint re_can_undone_entry_fk FOREIGN KEY (storehouse_id, undone_entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint re_can_into_another CHECK ((old_container_id <> new_container_id))
  constraint re_can_moves_something CHECK ((((grams)::bigint > 0) AND ((spilled_grams)::bigint >= 0)))
  constraint re_can_serial_counted CHECK ((((line >= 1) AND (line <= 20)) AND (serial > 0)))
  CREATE UNIQUE INDEX re_can_old_once ON book.re_can USING btree (storehouse_id, old_container_id) WHERE (undone_entry_id IS NULL)
  CREATE TRIGGER re_can_joins_holds AFTER INSERT ON book.re_can FOR EACH STATEMENT EXECUTE FUNCTION book.extend_holds()
  CREATE CONSTRAINT TRIGGER re_can_joins_holds_at_last AFTER INSERT ON book.re_can DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION book.extend_holds_at_last()
  CREATE TRIGGER re_can_serial_is_new AFTER INSERT OR UPDATE OF packing_session_id, line, serial ON book.re_can FOR EACH ROW EXECUTE FUNCTION book.refuse_serial_twice()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (undone_entry_id) to sheafbook_app

table book.rules row level security
  storehouse_id uuid not null
  rules_version integer not null
  deposit_percent integer default 40 not null
  freight_basis text default 'by-weight'::text not null
  blend_numerator integer default 1 not null
  blend_denominator integer default 2 not null
  split_rule text default 'proportional'::text not null
  common_cap_grams book.amount default 0 not null
  levy_hundredths_of_percent integer default 0 not null
  write_off_limit_minor_units book.amount default 500 not null
  price_rise_percent integer default 2 not null
  claim_window_hours integer default 48 not null
  uncollected_days integer default 30 not null
  decided_by uuid
  decided_at timestamp with time zone not null
  offer_days integer default 60 not null
  offer_days_without_pantry integer default 90 not null
  gift_window_days integer default 30 not null
  eat_first_margin_days integer default 30 not null
  constraint rules_pkey PRIMARY KEY (storehouse_id, rules_version)
  constraint rules_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint rules_blend_in_range CHECK (((blend_denominator > 0) AND ((blend_numerator >= 0) AND (blend_numerator <= blend_denominator))))
  constraint rules_dates_in_range CHECK ((((offer_days >= 0) AND (offer_days <= 1000)) AND ((offer_days_without_pantry >= 0) AND (offer_days_without_pantry <= 1000)) AND ((gift_window_days >= 1) AND (gift_window_days <= 365)) AND ((eat_first_margin_days >= 1) AND (eat_first_margin_days <= 365))))
  constraint rules_deposit_percent_in_range CHECK (((deposit_percent >= 0) AND (deposit_percent <= 100)))
  constraint rules_freight_basis_known CHECK ((freight_basis = ANY (ARRAY['by-weight'::text, 'by-value'::text, 'per-household'::text, 'blend'::text])))
  constraint rules_levy_in_range CHECK (((levy_hundredths_of_percent >= 0) AND (levy_hundredths_of_percent <= 10000)))
  constraint rules_split_rule_known CHECK ((split_rule = ANY (ARRAY['proportional'::text, 'equal-awards'::text, 'equal-losses'::text, 'first-come'::text, 'need-first'::text, 'rotation-of-loss'::text])))
  constraint rules_waits_positive CHECK (((claim_window_hours > 0) AND (uncollected_days > 0) AND (price_rise_percent >= 0)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.scale_check row level security
  storehouse_id uuid not null
  scale_check_id uuid default uuidv7() not null
  equipment_item_id uuid not null
  equipment_unit_id uuid not null
  is_scale boolean default true not null
  laid_grams bigint
  shown_grams bigint
  limit_grams bigint
  checked_on date not null
  checked_by uuid not null
  recorded_at timestamp with time zone not null
  is_thermometer boolean default false not null
  known_tenths integer
  shown_tenths integer
  limit_tenths integer
  constraint scale_check_pkey PRIMARY KEY (storehouse_id, scale_check_id)
  constraint scale_check_checked_by_fk FOREIGN KEY (storehouse_id, checked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint scale_check_of_a_scale FOREIGN KEY (storehouse_id, equipment_item_id, is_scale) REFERENCES book.equipment_item(storehouse_id, equipment_item_id, is_scale)
  constraint scale_check_of_a_thermometer FOREIGN KEY (storehouse_id, equipment_item_id, is_thermometer) REFERENCES book.equipment_item(storehouse_id, equipment_item_id, is_thermometer)
  constraint scale_check_unit_fk FOREIGN KEY (storehouse_id, equipment_item_id, equipment_unit_id) REFERENCES book.equipment_unit(storehouse_id, equipment_item_id, equipment_unit_id)
  constraint scale_check_degrees_limit_known CHECK (((limit_tenths >= 0) AND (limit_tenths <= 4000)))
  constraint scale_check_degrees_of_a_thermometer CHECK ((num_nonnulls(known_tenths, shown_tenths, limit_tenths) =
CASE
    WHEN is_thermometer THEN 3
    ELSE 0
END))
  constraint scale_check_grams_of_a_scale CHECK ((num_nonnulls(laid_grams, shown_grams, limit_grams) =
CASE
    WHEN is_scale THEN 3
    ELSE 0
END))
  constraint scale_check_has_happened CHECK ((checked_on <= (((recorded_at AT TIME ZONE 'UTC'::text))::date + 1)))
  constraint scale_check_lays_a_weight CHECK (((laid_grams >= 1) AND (laid_grams <= '9007199254740991'::bigint)))
  constraint scale_check_limit_known CHECK (((limit_grams >= 0) AND (limit_grams <= '9007199254740991'::bigint)))
  constraint scale_check_of_one_kind CHECK ((is_scale <> is_thermometer))
  constraint scale_check_shows_a_weight CHECK (((shown_grams >= 0) AND (shown_grams <= '9007199254740991'::bigint)))
  constraint scale_check_temperature_is_possible CHECK ((((known_tenths >= '-1000'::integer) AND (known_tenths <= 3000)) AND ((shown_tenths >= '-1000'::integer) AND (shown_tenths <= 3000))))
  CREATE INDEX scale_check_by_unit ON book.scale_check USING btree (storehouse_id, equipment_unit_id, checked_on)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.seal_check row level security
  storehouse_id uuid not null
  seal_check_id uuid default uuidv7() not null
  seal_machine_id uuid not null
  packing_session_id uuid not null
  line smallint not null
  serial integer
  container_kind_id uuid not null
  how text not null
  looks_good boolean not null
  measures jsonb
  faults jsonb not null
  passed boolean not null
  note text default ''::text not null
  suspect_from integer
  suspect_to integer
  checked_by uuid not null
  checked_at timestamp with time zone not null
  occasion text default 'due'::text not null
  gauge text default ''::text not null
  closed_through integer default 0 not null
  recorded_at timestamp with time zone not null
  good_until timestamp with time zone not null
  good_serial integer not null
  constraint seal_check_pkey PRIMARY KEY (storehouse_id, seal_check_id)
  constraint seal_check_checked_by_fk FOREIGN KEY (storehouse_id, checked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint seal_check_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint seal_check_machine_fk FOREIGN KEY (storehouse_id, seal_machine_id) REFERENCES book.seal_machine(storehouse_id, seal_machine_id)
  constraint seal_check_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint seal_check_closed_counted CHECK (((closed_through >= 0) AND ((serial IS NULL) OR (closed_through = 0) OR (serial <= closed_through))))
  constraint seal_check_good_until_made CHECK (((good_until <= checked_at) AND (good_serial >= 0)))
  constraint seal_check_how_known CHECK ((how = ANY (ARRAY['visual'::text, 'teardown'::text, 'squeeze'::text])))
  constraint seal_check_made_before_recorded CHECK ((checked_at <= recorded_at))
  constraint seal_check_occasion_known CHECK ((occasion = ANY (ARRAY['first'::text, 'due'::text, 'jam'::text, 'adjustment'::text, 'changeover'::text, 'last'::text, 'suspect'::text, 'clearing'::text])))
  constraint seal_check_passes_without_fault CHECK (((NOT passed) OR (looks_good AND (faults = '[]'::jsonb))))
  constraint seal_check_serial_counted CHECK ((((line >= 1) AND (line <= 20)) AND (serial > 0)))
  constraint seal_check_teardown_measured CHECK (((how <> 'teardown'::text) OR (measures IS NOT NULL)))
  constraint seal_check_window_runs_forward CHECK ((((suspect_from IS NULL) = (suspect_to IS NULL)) AND (suspect_from <= suspect_to) AND (NOT (passed AND (suspect_from IS NOT NULL)))))
  CREATE INDEX seal_check_by_session ON book.seal_check USING btree (storehouse_id, packing_session_id, line)
  CREATE TRIGGER seal_check_operator_old_enough BEFORE INSERT ON book.seal_check FOR EACH ROW EXECUTE FUNCTION book.refuse_young_operator()
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.seal_hold row level security
  storehouse_id uuid not null
  container_id uuid not null
  seal_check_id uuid not null
  disposition text
  settled_by uuid
  settled_at timestamp with time zone
  note text default ''::text not null
  constraint seal_hold_pkey PRIMARY KEY (storehouse_id, container_id, seal_check_id)
  constraint seal_hold_check_fk FOREIGN KEY (storehouse_id, seal_check_id) REFERENCES book.seal_check(storehouse_id, seal_check_id)
  constraint seal_hold_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint seal_hold_settled_by_fk FOREIGN KEY (storehouse_id, settled_by) REFERENCES book.person(storehouse_id, person_id)
  constraint seal_hold_disposition_known CHECK ((disposition = ANY (ARRAY['re-can'::text, 'eat-now'::text, 'release'::text, 'discard'::text])))
  constraint seal_hold_settled_whole CHECK ((((disposition IS NULL) = (settled_by IS NULL)) AND ((settled_by IS NULL) = (settled_at IS NULL))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (disposition, note, settled_at, settled_by) to sheafbook_app
  grant select to sheafbook_poster

table book.seal_machine row level security
  storehouse_id uuid not null
  seal_machine_id uuid default uuidv7() not null
  name text not null
  kind text not null
  out_since timestamp with time zone
  version integer default 1 not null
  constraint seal_machine_pkey PRIMARY KEY (storehouse_id, seal_machine_id)
  constraint seal_machine_name_once UNIQUE (storehouse_id, name)
  constraint seal_machine_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint seal_machine_kind_known CHECK ((kind = ANY (ARRAY['can-seamer'::text, 'heat-sealer'::text, 'vacuum-sealer'::text])))
  constraint seal_machine_named CHECK ((name ~ '\S'::text))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (out_since, version) to sheafbook_app

table book.seam_limit row level security
  storehouse_id uuid not null
  container_kind_id uuid not null
  width_least integer not null
  width_most integer not null
  thickness_least integer not null
  thickness_most integer not null
  countersink_least integer not null
  countersink_most integer not null
  overlap_percent integer not null
  lid_plate integer not null
  body_plate integer not null
  source text not null
  constraint seam_limit_pkey PRIMARY KEY (storehouse_id, container_kind_id)
  constraint seam_limit_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint seam_limit_runs_forward CHECK (((0 < width_least) AND (width_least <= width_most) AND (0 < thickness_least) AND (thickness_least <= thickness_most) AND (0 < countersink_least) AND (countersink_least <= countersink_most) AND ((overlap_percent >= 1) AND (overlap_percent <= 100)) AND (lid_plate > 0) AND (body_plate > 0) AND (width_least > ((2 * lid_plate) + body_plate))))
  constraint seam_limit_sourced CHECK ((source ~ '\S'::text))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (body_plate, countersink_least, countersink_most, lid_plate, overlap_percent, source, thickness_least, thickness_most, width_least, width_most) to sheafbook_app

table book.session_cost row level security
  storehouse_id uuid not null
  session_settlement_id uuid not null
  "position" smallint not null
  kind text not null
  what text not null
  supply_id uuid
  pieces integer
  minor_units book.amount not null
  borne_by text not null
  constraint session_cost_pkey PRIMARY KEY (storehouse_id, session_settlement_id, "position")
  constraint session_cost_settlement_fk FOREIGN KEY (storehouse_id, session_settlement_id) REFERENCES book.session_settlement(storehouse_id, session_settlement_id)
  constraint session_cost_supply_fk FOREIGN KEY (storehouse_id, supply_id) REFERENCES book.supply(storehouse_id, supply_id)
  constraint session_cost_borne_by_known CHECK ((borne_by = ANY (ARRAY['containers'::text, 'storehouse'::text])))
  constraint session_cost_counts_pieces CHECK ((((supply_id IS NULL) = (pieces IS NULL)) AND (pieces > 0)))
  constraint session_cost_kind_known CHECK ((kind = ANY (ARRAY['supplies'::text, 'scrap'::text, 'line-fee'::text, 'equipment-fee'::text, 'sundries'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.session_settlement row level security
  storehouse_id uuid not null
  session_settlement_id uuid default uuidv7() not null
  packing_session_id uuid not null
  entry_id uuid
  note text default ''::text not null
  settled_by uuid not null
  settled_at timestamp with time zone not null
  undone_at timestamp with time zone
  undone_entry_id uuid
  constraint session_settlement_pkey PRIMARY KEY (storehouse_id, session_settlement_id)
  constraint session_settlement_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint session_settlement_session_fk FOREIGN KEY (storehouse_id, packing_session_id) REFERENCES book.packing_session(storehouse_id, packing_session_id)
  constraint session_settlement_settled_by_fk FOREIGN KEY (storehouse_id, settled_by) REFERENCES book.person(storehouse_id, person_id)
  constraint session_settlement_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint session_settlement_undone_entry_fk FOREIGN KEY (storehouse_id, undone_entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint session_settlement_undone_whole CHECK (((undone_entry_id IS NULL) OR (undone_at IS NOT NULL)))
  CREATE UNIQUE INDEX session_settlement_one_standing ON book.session_settlement USING btree (storehouse_id, packing_session_id) WHERE (undone_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (undone_at, undone_entry_id) to sheafbook_app

table book.session_share row level security
  storehouse_id uuid not null
  session_settlement_id uuid not null
  "position" smallint not null
  household_id uuid not null
  containers integer not null
  minor_units book.amount not null
  constraint session_share_pkey PRIMARY KEY (storehouse_id, session_settlement_id, "position", household_id)
  constraint session_share_cost_fk FOREIGN KEY (storehouse_id, session_settlement_id, "position") REFERENCES book.session_cost(storehouse_id, session_settlement_id, "position")
  constraint session_share_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint session_share_counts_containers CHECK ((containers >= 0))
  CREATE INDEX session_share_by_household ON book.session_share USING btree (storehouse_id, household_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.share row level security
  storehouse_id uuid not null
  split_id uuid not null
  owner_id uuid not null
  claim_grams book.amount not null
  award_grams book.amount not null
  exact_award text not null
  carry_change_grams bigint default 0 not null
  constraint share_pkey PRIMARY KEY (storehouse_id, split_id, owner_id)
  constraint share_owner_fk FOREIGN KEY (storehouse_id, owner_id) REFERENCES book.owner(storehouse_id, owner_id)
  constraint share_split_fk FOREIGN KEY (storehouse_id, split_id) REFERENCES book.split(storehouse_id, split_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.share_piece row level security
  storehouse_id uuid not null
  split_id uuid not null
  bag_id uuid not null
  owner_id uuid not null
  grams book.amount not null
  constraint share_piece_pkey PRIMARY KEY (storehouse_id, split_id, bag_id, owner_id)
  constraint share_piece_bag_fk FOREIGN KEY (storehouse_id, bag_id) REFERENCES book.bag(storehouse_id, bag_id)
  constraint share_piece_share_fk FOREIGN KEY (storehouse_id, split_id, owner_id) REFERENCES book.share(storehouse_id, split_id, owner_id)
  constraint share_piece_positive CHECK (((grams)::bigint > 0))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.shelf_price row level security
  storehouse_id uuid not null
  shelf_price_id uuid default uuidv7() not null
  food_id uuid not null
  seen_on date not null
  minor_units bigint not null
  milligrams bigint not null
  seen_where text default ''::text not null
  noted_by uuid not null
  noted_at timestamp with time zone not null
  withdrawn_at timestamp with time zone
  constraint shelf_price_pkey PRIMARY KEY (storehouse_id, shelf_price_id)
  constraint shelf_price_food_fk FOREIGN KEY (storehouse_id, food_id) REFERENCES book.food(storehouse_id, food_id)
  constraint shelf_price_noted_by_fk FOREIGN KEY (storehouse_id, noted_by) REFERENCES book.person(storehouse_id, person_id)
  constraint shelf_price_for_some_mass CHECK (((milligrams >= 1) AND (milligrams <= '9007199254740991'::bigint)))
  constraint shelf_price_is_a_price CHECK (((minor_units >= 1) AND (minor_units <= '9007199254740991'::bigint)))
  CREATE INDEX shelf_price_by_food ON book.shelf_price USING btree (storehouse_id, food_id, seen_on)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (withdrawn_at) to sheafbook_app

table book.small_test row level security
  storehouse_id uuid not null
  small_test_id uuid default uuidv7() not null
  container_id uuid not null
  lot_id uuid not null
  household_id uuid
  kind text not null
  laid integer
  sprouted integer
  note text default ''::text not null
  tested_on date not null
  tested_by uuid not null
  constraint small_test_pkey PRIMARY KEY (storehouse_id, small_test_id)
  constraint small_test_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint small_test_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint small_test_lot_fk FOREIGN KEY (storehouse_id, lot_id) REFERENCES book.lot(storehouse_id, lot_id)
  constraint small_test_tested_by_fk FOREIGN KEY (storehouse_id, tested_by) REFERENCES book.person(storehouse_id, person_id)
  constraint small_test_counts_seeds CHECK ((((kind = 'sprout'::text) = (laid IS NOT NULL)) AND ((laid IS NULL) = (sprouted IS NULL)) AND ((laid >= 1) AND (laid <= 10000)) AND ((sprouted >= 0) AND (sprouted <= laid))))
  constraint small_test_kind_known CHECK ((kind = ANY (ARRAY['sprout'::text, 'bake'::text, 'cook'::text])))
  constraint small_test_says_something CHECK (((kind = 'sprout'::text) OR (note ~ '\S'::text)))
  CREATE INDEX small_test_by_lot ON book.small_test USING btree (storehouse_id, lot_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  policy small_test_private restrictive for all to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household))))
  grant insert, select to sheafbook_app

table book.split row level security
  storehouse_id uuid not null
  split_id uuid default uuidv7() not null
  buy_id uuid not null
  buy_line_id uuid not null
  round_no integer not null
  rule text not null
  method_version integer not null
  answer jsonb not null
  made_by uuid not null
  made_at timestamp with time zone not null
  undone_at timestamp with time zone
  constraint split_pkey PRIMARY KEY (storehouse_id, split_id)
  constraint split_line_fk FOREIGN KEY (storehouse_id, buy_id, buy_line_id) REFERENCES book.buy_line(storehouse_id, buy_id, buy_line_id)
  constraint split_made_by_fk FOREIGN KEY (storehouse_id, made_by) REFERENCES book.person(storehouse_id, person_id)
  constraint split_rule_known CHECK ((rule = ANY (ARRAY['proportional'::text, 'equal-awards'::text, 'equal-losses'::text, 'first-come'::text, 'need-first'::text, 'rotation-of-loss'::text])))
  CREATE UNIQUE INDEX split_round_once ON book.split USING btree (storehouse_id, buy_line_id, round_no) WHERE (undone_at IS NULL)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (undone_at) to sheafbook_app

table book.split_inputs row level security
  storehouse_id uuid not null
  split_id uuid not null
  inputs jsonb not null
  constraint split_inputs_pkey PRIMARY KEY (storehouse_id, split_id)
  constraint split_inputs_split_fk FOREIGN KEY (storehouse_id, split_id) REFERENCES book.split(storehouse_id, split_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  policy split_inputs_private restrictive for select to public using ((( SELECT book.current_task() AS current_task) = ANY (ARRAY['split'::text, 'review'::text])))
  grant insert, select to sheafbook_app

table book.stage_move row level security
  storehouse_id uuid not null
  stage_move_id uuid default uuidv7() not null
  buy_id uuid not null
  from_stage text not null
  to_stage text not null
  reason text default ''::text not null
  person_id uuid not null
  moved_at timestamp with time zone not null
  constraint stage_move_pkey PRIMARY KEY (storehouse_id, stage_move_id)
  constraint stage_move_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint stage_move_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint stage_move_along_an_edge CHECK (((((((((((((from_stage = 'planning'::text) AND (to_stage = 'gathering'::text)) OR ((from_stage = 'gathering'::text) AND (to_stage = 'fixed'::text))) OR ((from_stage = 'fixed'::text) AND (to_stage = 'gathering'::text))) OR ((from_stage = 'fixed'::text) AND (to_stage = 'ordered'::text))) OR ((from_stage = 'ordered'::text) AND (to_stage = 'landed'::text))) OR ((from_stage = 'landed'::text) AND (to_stage = 'shared-out'::text))) OR ((from_stage = 'shared-out'::text) AND (to_stage = 'closed'::text))) OR ((from_stage = 'planning'::text) AND (to_stage = 'called-off'::text))) OR ((from_stage = 'gathering'::text) AND (to_stage = 'called-off'::text))) OR ((from_stage = 'fixed'::text) AND (to_stage = 'called-off'::text))) OR ((from_stage = 'ordered'::text) AND (to_stage = 'called-off'::text))))
  CREATE INDEX stage_move_by_buy ON book.stage_move USING btree (storehouse_id, buy_id, stage_move_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.stock_count row level security
  storehouse_id uuid not null
  stock_count_id uuid default uuidv7() not null
  account_id uuid not null
  book_grams book.amount not null
  counted_grams book.amount not null
  note text default ''::text not null
  counted_by uuid not null
  counted_at timestamp with time zone not null
  entry_id uuid
  constraint stock_count_pkey PRIMARY KEY (storehouse_id, stock_count_id)
  constraint stock_count_account_fk FOREIGN KEY (storehouse_id, account_id) REFERENCES book.account(storehouse_id, account_id)
  constraint stock_count_counted_by_fk FOREIGN KEY (storehouse_id, counted_by) REFERENCES book.person(storehouse_id, person_id)
  constraint stock_count_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint stock_count_books_a_difference CHECK (((entry_id IS NULL) OR ((book_grams)::bigint <> (counted_grams)::bigint)))
  CREATE INDEX stock_count_by_account ON book.stock_count USING btree (storehouse_id, account_id)
  CREATE INDEX stock_count_by_entry ON book.stock_count USING btree (storehouse_id, entry_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (entry_id) to sheafbook_app

table book.stop_link row level security
  storehouse_id uuid not null
  token_hash text not null
  person_id uuid not null
  kind text not null
  made_at timestamp with time zone not null
  constraint stop_link_pkey PRIMARY KEY (storehouse_id, token_hash)
  constraint stop_link_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.storehouse row level security
  storehouse_id uuid default uuidv7() not null
  name text not null
  currency character(3) not null
  time_zone text not null
  mass_display text default 'lb'::text not null
  language text default 'en'::text not null
  version integer default 1 not null
  founded_at timestamp with time zone not null
  year_end_month smallint default 12 not null
  constraint storehouse_pkey PRIMARY KEY (storehouse_id)
  constraint storehouse_currency_code CHECK ((currency ~ '^[A-Z]{3}$'::text))
  constraint storehouse_language_known CHECK ((language = ANY (ARRAY['en'::text, 'es'::text])))
  constraint storehouse_mass_display_known CHECK ((mass_display = ANY (ARRAY['lb'::text, 'kg'::text])))
  constraint storehouse_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  constraint storehouse_year_ends_with_a_month CHECK (((year_end_month >= 1) AND (year_end_month <= 12)))
  policy my_storehouses for select to public using (((( SELECT book.current_storehouse() AS current_storehouse) IS NULL) AND (EXISTS ( SELECT
   FROM book.person p
  WHERE ((p.storehouse_id = storehouse.storehouse_id) AND (p.login_id = ( SELECT book.current_login() AS current_login)) AND (p.left_on IS NULL))))))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (language, mass_display, name, time_zone, version, year_end_month) to sheafbook_app

table book.supplier row level security
  storehouse_id uuid not null
  supplier_id uuid not null
  owner_kind text default 'supplier'::text not null
  name text not null
  contact text default ''::text not null
  version integer default 1 not null
  constraint supplier_pkey PRIMARY KEY (storehouse_id, supplier_id)
  constraint supplier_name_once UNIQUE (storehouse_id, name)
  constraint supplier_owner_fk FOREIGN KEY (storehouse_id, supplier_id, owner_kind) REFERENCES book.owner(storehouse_id, owner_id, kind)
  constraint supplier_is_an_owner CHECK ((owner_kind = 'supplier'::text))
  constraint supplier_named CHECK (((name ~ '\S'::text) AND (length(name) <= 120)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (contact, name, version) to sheafbook_app

table book.supplier_order row level security
  storehouse_id uuid not null
  supplier_order_id uuid default uuidv7() not null
  order_no integer not null
  buy_id uuid not null
  supplier_id uuid not null
  quote_id uuid not null
  ordered_on date not null
  goods_minor_units book.amount not null
  freight_minor_units book.amount not null
  deliver_to text default ''::text not null
  note text default ''::text not null
  cancelled_at timestamp with time zone
  cancellation_note text default ''::text not null
  constraint supplier_order_pkey PRIMARY KEY (storehouse_id, supplier_order_id)
  constraint supplier_order_no_once UNIQUE (storehouse_id, order_no)
  constraint supplier_order_quote_once UNIQUE (storehouse_id, buy_id, quote_id)
  constraint supplier_order_quote_fk FOREIGN KEY (storehouse_id, buy_id, quote_id) REFERENCES book.quote(storehouse_id, buy_id, quote_id)
  constraint supplier_order_supplier_fk FOREIGN KEY (storehouse_id, supplier_id) REFERENCES book.supplier(storehouse_id, supplier_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (cancellation_note, cancelled_at) to sheafbook_app

table book.supply row level security
  storehouse_id uuid not null
  supply_id uuid not null
  unit_kind text default 'supply'::text not null
  name text not null
  kind text not null
  container_kind_id uuid
  size_millilitres integer
  pieces_each integer default 1 not null
  pack_pieces integer not null
  pack_minor_units book.amount
  is_retired boolean default false not null
  version integer default 1 not null
  constraint supply_pkey PRIMARY KEY (storehouse_id, supply_id)
  constraint supply_name_once UNIQUE (storehouse_id, name)
  constraint supply_container_kind_fk FOREIGN KEY (storehouse_id, container_kind_id) REFERENCES book.container_kind(storehouse_id, container_kind_id)
  constraint supply_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint supply_unit_fk FOREIGN KEY (storehouse_id, supply_id, unit_kind) REFERENCES book.unit(storehouse_id, unit_id, kind)
  constraint supply_counts_something CHECK ((((pieces_each >= 1) AND (pieces_each <= 1000)) AND ((pack_pieces >= 1) AND (pack_pieces <= 1000000))))
  constraint supply_fits_its_container CHECK (((kind = ANY (ARRAY['container'::text, 'lid'::text, 'liner'::text, 'carton'::text])) = (container_kind_id IS NOT NULL)))
  constraint supply_has_its_size CHECK ((((kind = 'absorber'::text) = (size_millilitres IS NOT NULL)) AND (size_millilitres > 0)))
  constraint supply_kind_known CHECK ((kind = ANY (ARRAY['container'::text, 'lid'::text, 'liner'::text, 'carton'::text, 'absorber'::text, 'dry-ice'::text, 'label'::text, 'glove'::text, 'other'::text])))
  constraint supply_named CHECK ((name ~ '\S'::text))
  constraint supply_unit_is_its_own CHECK ((unit_kind = 'supply'::text))
  CREATE UNIQUE INDEX supply_one_of_its_sort ON book.supply USING btree (storehouse_id, kind, container_kind_id, size_millilitres) NULLS NOT DISTINCT WHERE ((NOT is_retired) AND (kind <> ALL (ARRAY['glove'::text, 'other'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (is_retired, name, pack_minor_units, pack_pieces, pieces_each, version) to sheafbook_app

table book.supply_price row level security
  storehouse_id uuid not null
  supply_code text not null
  price_minor_units book.amount not null
  constraint supply_price_pkey PRIMARY KEY (storehouse_id, supply_code)
  constraint supply_price_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint supply_price_code_known CHECK (((supply_code ~ '^absorber-(20|50|100|200|300|500|1000|2000)$'::text) OR (supply_code = 'dry-ice-kilogram'::text)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (price_minor_units) to sheafbook_app

table book.supply_use_by row level security
  storehouse_id uuid not null
  entry_id uuid not null
  supply_id uuid not null
  use_by date not null
  constraint supply_use_by_pkey PRIMARY KEY (storehouse_id, entry_id, supply_id)
  constraint supply_use_by_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint supply_use_by_supply_fk FOREIGN KEY (storehouse_id, supply_id) REFERENCES book.supply(storehouse_id, supply_id)
  constraint supply_use_by_in_reach CHECK (((use_by >= '1900-01-01'::date) AND (use_by <= '2199-12-31'::date)))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.telling row level security
  storehouse_id uuid not null
  person_id uuid not null
  channel text not null
  telling_key text not null
  told_at timestamp with time zone not null
  constraint telling_pkey PRIMARY KEY (storehouse_id, person_id, channel, telling_key)
  constraint telling_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint telling_channel_known CHECK ((channel = 'email'::text))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select to sheafbook_app

table book.telling_wish row level security
  storehouse_id uuid not null
  person_id uuid not null
  language text not null
  time_zone text not null
  from_hour integer not null
  to_hour integer not null
  digest_hour integer
  is_email_on boolean not null
  stopped_kinds text[] not null
  version integer default 1 not null
  constraint telling_wish_pkey PRIMARY KEY (storehouse_id, person_id)
  constraint telling_wish_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint telling_wish_digest_comes CHECK ((((digest_hour >= 0) AND (digest_hour <= 23)) AND
CASE
    WHEN (from_hour < to_hour) THEN ((digest_hour >= from_hour) AND (digest_hour < to_hour))
    ELSE ((digest_hour >= from_hour) OR (digest_hour < to_hour))
END))
  constraint telling_wish_hours_come CHECK ((((from_hour >= 0) AND (from_hour <= 23)) AND ((to_hour >= 1) AND (to_hour <= 24)) AND (from_hour <> to_hour)))
  constraint telling_wish_language_known CHECK ((language = ANY (ARRAY['en'::text, 'es'::text])))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, insert, select, update (digest_hour, from_hour, is_email_on, language, stopped_kinds, time_zone, to_hour, version) to sheafbook_app

table book.unit row level security
  storehouse_id uuid not null
  unit_id uuid default uuidv7() not null
  kind text not null
  currency character(3)
  constraint unit_pkey PRIMARY KEY (storehouse_id, unit_id)
  constraint unit_id_and_kind UNIQUE (storehouse_id, unit_id, kind)
  constraint unit_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint unit_currency_named CHECK (((kind = 'currency'::text) = (currency IS NOT NULL)))
  constraint unit_kind_known CHECK ((kind = ANY (ARRAY['currency'::text, 'lot'::text, 'supply'::text])))
  CREATE UNIQUE INDEX unit_one_currency ON book.unit USING btree (storehouse_id) WHERE (kind = 'currency'::text)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app
  grant select to sheafbook_poster

table book.vessel row level security
  storehouse_id uuid not null
  vessel_id uuid default uuidv7() not null
  kind text not null
  constraint vessel_pkey PRIMARY KEY (storehouse_id, vessel_id)
  constraint vessel_id_and_kind UNIQUE (storehouse_id, vessel_id, kind)
  constraint vessel_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint vessel_kind_known CHECK ((kind = ANY (ARRAY['bag'::text, 'container'::text, 'kitchen'::text, 'supplier'::text, 'eaten'::text, 'given'::text, 'animals'::text, 'composted'::text, 'spilled'::text, 'sampled'::text, 'discarded'::text, 'transformed'::text, 'unexplained'::text, 'moisture'::text])))
  CREATE UNIQUE INDEX vessel_outside_once ON book.vessel USING btree (storehouse_id, kind) WHERE (kind <> ALL (ARRAY['bag'::text, 'container'::text, 'kitchen'::text]))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.watch row level security
  storehouse_id uuid not null
  container_id uuid not null
  inspection_id uuid not null
  household_id uuid
  finding text not null
  is_same_window boolean not null
  since timestamp with time zone not null
  constraint watch_pkey PRIMARY KEY (storehouse_id, container_id, inspection_id)
  constraint watch_container_fk FOREIGN KEY (storehouse_id, container_id) REFERENCES book.container(storehouse_id, container_id)
  constraint watch_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint watch_inspection_fk FOREIGN KEY (storehouse_id, inspection_id) REFERENCES book.inspection(storehouse_id, inspection_id)
  CREATE INDEX watch_by_household ON book.watch USING btree (storehouse_id, household_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  policy watch_private restrictive for select to public using (((household_id IS NULL) OR (household_id = ( SELECT book.current_household() AS current_household))))
  grant insert, select to sheafbook_app

table book.withdrawal row level security
  storehouse_id uuid not null
  withdrawal_id uuid default uuidv7() not null
  buy_id uuid not null
  household_id uuid not null
  stage_then text not null
  reason text not null
  answer jsonb not null
  person_id uuid not null
  withdrawn_at timestamp with time zone not null
  constraint withdrawal_pkey PRIMARY KEY (storehouse_id, withdrawal_id)
  constraint withdrawal_buy_fk FOREIGN KEY (storehouse_id, buy_id) REFERENCES book.buy(storehouse_id, buy_id)
  constraint withdrawal_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint withdrawal_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  CREATE INDEX withdrawal_by_buy ON book.withdrawal USING btree (storehouse_id, buy_id)
  CREATE UNIQUE INDEX withdrawal_once ON book.withdrawal USING btree (storehouse_id, buy_id, household_id) WHERE (stage_then = ANY (ARRAY['ordered'::text, 'landed'::text]))
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select to sheafbook_app

table book.work row level security
  storehouse_id uuid not null
  work_id uuid default uuidv7() not null
  task text not null
  payload jsonb not null
  job_key text
  person_id uuid
  state text default 'waiting'::text not null
  version integer default 1 not null
  tries integer default 0 not null
  last_reason text
  made_at timestamp with time zone default now() not null
  due_at timestamp with time zone
  ended_at timestamp with time zone
  constraint work_pkey PRIMARY KEY (storehouse_id, work_id)
  constraint work_person_fk FOREIGN KEY (storehouse_id, person_id) REFERENCES book.person(storehouse_id, person_id)
  constraint work_storehouse_id_fkey FOREIGN KEY (storehouse_id) REFERENCES book.storehouse(storehouse_id)
  constraint work_dead_explained CHECK (((state <> 'dead'::text) OR (last_reason IS NOT NULL)))
  constraint work_ended_when_over CHECK (((ended_at IS NULL) = (state = 'waiting'::text)))
  constraint work_key_fits CHECK (((length(job_key) >= 1) AND (length(job_key) <= 200)))
  constraint work_state_known CHECK ((state = ANY (ARRAY['waiting'::text, 'done'::text, 'dead'::text])))
  constraint work_task_named CHECK ((task ~ '^[a-z][a-z-]{0,60}$'::text))
  constraint work_tries_counted CHECK ((tries >= 0))
  CREATE INDEX work_dead ON book.work USING btree (storehouse_id, ended_at) WHERE (state = 'dead'::text)
  CREATE INDEX work_waiting ON book.work USING btree (storehouse_id, due_at) WHERE (state = 'waiting'::text)
  CREATE UNIQUE INDEX work_waiting_once ON book.work USING btree (storehouse_id, job_key) WHERE (state = 'waiting'::text)
  policy housekeeping for all to sheafbook_housekeeping using (true)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant delete, select, update (due_at, ended_at, last_reason, state, tries) to sheafbook_app
  grant delete, select to sheafbook_housekeeping

table book.write_off row level security
  storehouse_id uuid not null
  write_off_id uuid default uuidv7() not null
  household_id uuid not null
  minor_units book.amount not null
  needs_two boolean not null
  reason text not null
  asked_by uuid not null
  asked_at timestamp with time zone not null
  agreed_by uuid
  agreed_at timestamp with time zone
  withdrawn_at timestamp with time zone
  entry_id uuid
  constraint write_off_pkey PRIMARY KEY (storehouse_id, write_off_id)
  constraint write_off_entry_once UNIQUE (storehouse_id, entry_id)
  constraint write_off_agreed_by_fk FOREIGN KEY (storehouse_id, agreed_by) REFERENCES book.person(storehouse_id, person_id)
  constraint write_off_asked_by_fk FOREIGN KEY (storehouse_id, asked_by) REFERENCES book.person(storehouse_id, person_id)
  constraint write_off_entry_fk FOREIGN KEY (storehouse_id, entry_id) REFERENCES book.entry(storehouse_id, entry_id)
  constraint write_off_household_fk FOREIGN KEY (storehouse_id, household_id) REFERENCES book.household(storehouse_id, household_id)
  constraint write_off_agreed_whole CHECK (((agreed_by IS NULL) = (agreed_at IS NULL)))
  constraint write_off_explained CHECK ((reason ~ '\S'::text))
  constraint write_off_posted_when_agreed CHECK (((entry_id IS NULL) OR (NOT needs_two) OR (agreed_by IS NOT NULL)))
  constraint write_off_two_logins CHECK ((agreed_by <> asked_by))
  constraint write_off_withdrawn_before_posting CHECK (((entry_id IS NULL) OR (withdrawn_at IS NULL)))
  constraint write_off_writes_something_off CHECK (((minor_units)::bigint > 0))
  CREATE INDEX write_off_by_household ON book.write_off USING btree (storehouse_id, household_id)
  policy own_storehouse for all to public using ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse))) with check ((storehouse_id = ( SELECT book.current_storehouse() AS current_storehouse)))
  grant insert, select, update (agreed_at, agreed_by, entry_id, withdrawn_at) to sheafbook_app

table door.attempt no row level security
  attempt_id bigint generated always as identity not null
  attempt_key text not null
  attempted_at timestamp with time zone not null
  constraint attempt_pkey PRIMARY KEY (attempt_id)
  CREATE INDEX attempt_by_key ON door.attempt USING btree (attempt_key, attempted_at)

table door.login no row level security
  login_id uuid default uuidv7() not null
  email text not null
  name text not null
  password_hash text not null
  made_at timestamp with time zone not null
  constraint login_pkey PRIMARY KEY (login_id)
  constraint login_email_once UNIQUE (email)
  constraint login_email_plain CHECK (((email = lower(email)) AND (email ~ '^[^\s@]+@[^\s@]+$'::text) AND (length(email) <= 254)))

table door.session no row level security
  session_id text not null
  login_id uuid not null
  expires_at timestamp with time zone not null
  constraint session_pkey PRIMARY KEY (session_id)
  constraint session_login_id_fkey FOREIGN KEY (login_id) REFERENCES door.login(login_id) ON DELETE CASCADE
  constraint session_id_is_a_hash CHECK ((session_id ~ '^[0-9a-f]{64}$'::text))
  CREATE INDEX session_by_login ON door.session USING btree (login_id)

table migration.applied no row level security
  number integer not null
  name text not null
  sha256 text not null
  applied_at timestamp with time zone default now() not null
  constraint applied_pkey PRIMARY KEY (number)
  constraint applied_once UNIQUE (name)

CREATE OR REPLACE FUNCTION book.bank_match_fits()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  said bigint;
  booked bigint;
begin
  select l.minor_units into said from book.bank_line l
    where l.storehouse_id = new.storehouse_id and l.bank_line_id = new.bank_line_id;
  select coalesce(sum(case when d.kind = 'bank' then m.amount else 0 end)
      - sum(case when o.kind = 'bank' then m.amount else 0 end), 0) into booked
    from book.movement m
    join book.account d on d.storehouse_id = m.storehouse_id and d.account_id = m.destination_id
    join book.account o on o.storehouse_id = m.storehouse_id and o.account_id = m.source_id
    where m.storehouse_id = new.storehouse_id and m.entry_id = new.entry_id;
  if said is distinct from booked then
    raise exception 'the line says % and the entry %', said, booked
      using errcode = 'check_violation', constraint = 'bank_match_same_amount';
  end if;
  if new.undone_at is null and exists (select from book.entry e where e.storehouse_id = new.storehouse_id
      and (e.reverses_id = new.entry_id or (e.entry_id = new.entry_id and e.reverses_id is not null))) then
    raise exception 'the entry was taken back'
      using errcode = 'check_violation', constraint = 'bank_match_entry_stands';
  end if;
  return null;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.close_account(p_account uuid)
 RETURNS boolean
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 UPDATE book.account SET closed = true
   WHERE ((account.storehouse_id = book.current_storehouse()) AND (account.account_id = close_account.p_account) AND (account.kind = ANY (ARRAY['buy_clearing'::text, 'session_clearing'::text, 'buy_deposit'::text])))
   RETURNING account.closed;
END
  owner sheafbook_poster
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.close_period(p_through date)
 RETURNS date
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 UPDATE book.book_state SET closed_through = close_period.p_through
   WHERE ((book_state.storehouse_id = book.current_storehouse()) AND ((book_state.closed_through IS NULL) OR (book_state.closed_through < close_period.p_through)))
   RETURNING book_state.closed_through;
END
  owner sheafbook_poster
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.container_move_fits()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  packed date;
  owner uuid;
begin
  select c.packed_on, c.household_id into packed, owner from book.container c
    where c.storehouse_id = new.storehouse_id and c.container_id = new.container_id;
  if new.moved_on < packed then
    raise exception 'it was packed on %', packed
      using errcode = 'check_violation', constraint = 'container_move_after_packing';
  end if;
  if new.place_id is not null and not exists (select from book.place p where p.storehouse_id = new.storehouse_id
      and p.place_id = new.place_id and (p.household_id is null or p.household_id = owner)) then
    raise exception 'the place is another household''s'
      using errcode = 'check_violation', constraint = 'container_move_to_own_place';
  end if;
  return null;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.current_household()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('app.household'::text, true), ''::text))::uuid
  owner sheafbook_owner
  execute: public, sheafbook_app, sheafbook_housekeeping, sheafbook_poster

CREATE OR REPLACE FUNCTION book.current_login()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('app.login'::text, true), ''::text))::uuid
  owner sheafbook_owner
  execute: public, sheafbook_app, sheafbook_housekeeping, sheafbook_poster

CREATE OR REPLACE FUNCTION book.current_storehouse()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('app.storehouse'::text, true), ''::text))::uuid
  owner sheafbook_owner
  execute: public, sheafbook_app, sheafbook_housekeeping, sheafbook_poster

CREATE OR REPLACE FUNCTION book.current_task()
 RETURNS text
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN COALESCE(current_setting('app.task'::text, true), ''::text)
  owner sheafbook_owner
  execute: public, sheafbook_app, sheafbook_housekeeping, sheafbook_poster

CREATE OR REPLACE FUNCTION book.due_work(at timestamp with time zone)
 RETURNS TABLE(storehouse_id uuid, work_id uuid)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT w.storehouse_id,
     w.work_id
    FROM book.work w
   WHERE ((w.state = 'waiting'::text) AND ((w.due_at IS NULL) OR (w.due_at <= due_work.at)))
   ORDER BY w.made_at, w.work_id;
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.enqueue_everywhere(wanted_task text)
 RETURNS integer
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare made record; asked integer := 0;
begin
  for made in insert into book.work (storehouse_id, task, payload, job_key)
      select s.storehouse_id, wanted_task, '{}', 'every ' || wanted_task from book.storehouse s
      on conflict (storehouse_id, job_key) where state = 'waiting' do nothing returning storehouse_id, work_id loop
    perform book.queue_work(made.storehouse_id, made.work_id, null);
    asked := asked + 1;
  end loop;
  return asked;
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.enqueue_work(in_storehouse uuid, wanted_task text, wanted_payload jsonb, due timestamp with time zone, wanted_key text, for_person uuid)
 RETURNS uuid
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare made uuid;
begin
  if in_storehouse is distinct from book.current_storehouse() then
    raise exception 'work belongs to the storehouse of its transaction' using errcode = 'insufficient_privilege';
  end if;
  insert into book.work as w (storehouse_id, task, payload, job_key, person_id, due_at)
    values (in_storehouse, wanted_task, wanted_payload, wanted_key, for_person, due)
    on conflict (storehouse_id, job_key) where state = 'waiting' do update set task = excluded.task,
      payload = excluded.payload, person_id = excluded.person_id, due_at = excluded.due_at, version = w.version + 1,
      tries = 0, last_reason = null
    returning work_id into made;
  perform book.queue_work(in_storehouse, made, due);
  return made;
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.extend_holds()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
begin
  insert into book.hold_vessel (storehouse_id, hold_id, vessel_id, reached_at)
    select h.storehouse_id, h.hold_id, r.vessel_id, greatest(h.held_at, e.recorded_at)
    from book.hold h cross join lateral book.list_reach(h.storehouse_id, h.hold_id) r
    left join book.book_state b on b.storehouse_id = h.storehouse_id
    left join book.entry e on e.storehouse_id = b.storehouse_id and e.entry_no = b.last_entry_no -- what filled it came before
    where h.storehouse_id = book.current_storehouse() and h.released_at is null and h.scope not in ('bag', 'containers')
    on conflict do nothing;
  return null;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.extend_holds_at_last()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  this text := pg_current_xact_id()::text;
begin
  if book.current_storehouse() is null or current_setting('app.holds_extended', true) = this then return null; end if;
  perform set_config('app.holds_extended', this, true);
  perform book.lock_book();
  insert into book.hold_vessel (storehouse_id, hold_id, vessel_id, reached_at)
    select h.storehouse_id, h.hold_id, r.vessel_id, greatest(h.held_at, e.recorded_at)
    from book.hold h cross join lateral book.list_reach(h.storehouse_id, h.hold_id) r
    left join book.book_state b on b.storehouse_id = h.storehouse_id
    left join book.entry e on e.storehouse_id = b.storehouse_id and e.entry_no = b.last_entry_no
    where h.storehouse_id = book.current_storehouse() and h.released_at is null and h.scope not in ('bag', 'containers')
    on conflict do nothing;
  return null;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.hold_what_is_filled(p_accounts uuid[], p_at timestamp with time zone)
 RETURNS void
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  s uuid := book.current_storehouse();
  task_before text := coalesce(current_setting('app.task', true), '');
begin
  perform set_config('app.task', 'hold', true);
  insert into book.hold_vessel as v (storehouse_id, hold_id, vessel_id, reached_at)
    select distinct s, h.hold_id, c.container_id, greatest(h.held_at, p_at)
    from book.account a
    join book.container c on c.storehouse_id = s and c.container_id = a.vessel_id
    join book.lot l on l.storehouse_id = s and l.lot_id = c.lot_id
    join book.hold h on h.storehouse_id = s and h.released_at is null
    where a.storehouse_id = s and a.account_id = any(p_accounts) and a.vessel_kind = 'container'
      and (h.scope = 'food' and h.food_id = l.food_id and c.packed_on between h.from_on and h.to_on
        or h.scope = 'place' and exists (select from book.container_place p
          where p.storehouse_id = s and p.container_id = c.container_id and p.place_id = h.place_id))
    on conflict (storehouse_id, hold_id, vessel_id) do update set ended_at = null where v.ended_at is not null;
  perform set_config('app.task', task_before, true);
end $function$
  owner sheafbook_owner
  execute: sheafbook_poster

CREATE OR REPLACE FUNCTION book.keep_house(now_at timestamp with time zone)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 DELETE FROM book.kept_answer
   WHERE (kept_answer.kept_at < (keep_house.now_at - '30 days'::interval));
 DELETE FROM book.private_read
   WHERE (private_read.read_at < (keep_house.now_at - '2 years'::interval));
 DELETE FROM book.work
   WHERE ((work.state = 'done'::text) AND (work.ended_at < (keep_house.now_at - '30 days'::interval)));
END
  owner sheafbook_housekeeping
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.keep_in_storehouse(tenant_table regclass)
 RETURNS void
 LANGUAGE plpgsql
AS $function$
begin
  execute format('alter table %s enable row level security', tenant_table);
  execute format('create policy own_storehouse on %s using (storehouse_id = (select book.current_storehouse()))
    with check (storehouse_id = (select book.current_storehouse()))', tenant_table);
end $function$
  owner sheafbook_owner
  execute: owner alone

CREATE OR REPLACE FUNCTION book.list_found_for_giving(p_storehouse uuid, p_containers uuid[])
 RETURNS TABLE(container_id uuid, findings text[], outcome text)
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
#variable_conflict use_column
declare
  task_before text := coalesce(current_setting('app.task', true), '');
begin
  perform set_config('app.task', 'giving', true);
  return query select distinct on (i.container_id) i.container_id, i.findings, i.outcome from book.any_look i
    where i.storehouse_id = p_storehouse and i.container_id = any(p_containers)
    order by i.container_id, i.inspection_id desc;
  perform set_config('app.task', task_before, true);
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.list_kept_warmth(p_storehouse uuid, p_containers uuid[])
 RETURNS SETOF book.place_warmth
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  task_before text := coalesce(current_setting('app.task', true), '');
begin
  perform set_config('app.task', 'kept-history', true);
  return query select distinct w.* from book.container_move m
    join book.place_warmth w on w.storehouse_id = m.storehouse_id and w.place_id = m.place_id and w.to_on > m.moved_on
      and w.from_on < coalesce((select min(l.moved_on) from book.container_move l where l.storehouse_id = m.storehouse_id
        and l.container_id = m.container_id
        and (l.moved_on, l.moved_at, l.container_move_id) > (m.moved_on, m.moved_at, m.container_move_id)), 'infinity')
    where m.storehouse_id = p_storehouse and m.container_id = any(p_containers);
  perform set_config('app.task', task_before, true);
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.list_leaning_on_import(p_import uuid)
 RETURNS TABLE(leaning text, kind text, thing_id uuid, row_count bigint)
 LANGUAGE plpgsql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  s uuid := book.current_storehouse();
  link record;
begin
  for link in
    select c.conrelid::regclass as leaning, a.attname as link_column, p.attname as id_column, t.kind
    from (values ('book.household', 'household_id', 'household'), ('book.owner', 'owner_id', 'household'),
      ('book.person', 'person_id', 'person'), ('book.eater', 'eater_id', 'eater'), ('book.food', 'food_id', 'food'),
      ('book.supplier', 'supplier_id', 'supplier'), ('book.owner', 'owner_id', 'supplier'),
      ('book.equipment_item', 'equipment_item_id', 'equipment_item'), ('book.lot', 'lot_id', 'lot'),
      ('book.unit', 'unit_id', 'lot'), ('book.container', 'container_id', 'container'),
      ('book.vessel', 'vessel_id', 'container')) t (target, target_column, kind)
    join pg_constraint c on c.contype = 'f' and c.confrelid = t.target::regclass
    cross join lateral unnest(c.conkey, c.confkey) k (link_no, target_no)
    join pg_attribute f on f.attrelid = c.confrelid and f.attnum = k.target_no and f.attname = t.target_column
    join pg_attribute a on a.attrelid = c.conrelid and a.attnum = k.link_no
    join pg_constraint pk on pk.contype = 'p' and pk.conrelid = c.conrelid
    join pg_attribute p on p.attrelid = c.conrelid and p.attnum = pk.conkey[2] -- the first is the storehouse's
    where c.conrelid not in ('book.account'::regclass, 'book.movement'::regclass, 'book.private_read'::regclass,
      'book.household_contact'::regclass)
    order by 1, 4
  loop
    return query execute format('select %L::text, t.kind, t.thing_id, count(*) from book.import_thing t
      join %s r on r.storehouse_id = t.storehouse_id and r.%I = t.thing_id
      where t.storehouse_id = $1 and t.import_id = $2 and t.kind = %L and not exists (select from book.import_thing o
        where o.storehouse_id = $1 and o.import_id = $2 and o.thing_id::text = r.%I::text)
      group by t.kind, t.thing_id', replace(link.leaning::text, 'book.', ''), link.leaning, link.link_column, link.kind, link.id_column)
      using s, p_import;
  end loop;
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.list_lids(p_storehouse uuid, p_since date, p_in_store boolean)
 RETURNS TABLE(container_id uuid, household_id uuid, packing_session_id uuid, closed_at timestamp with time zone, is_in_store boolean, says text, said_of timestamp with time zone, checked_at timestamp with time zone, looked_at timestamp with time zone, outcome text)
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
#variable_conflict use_column
declare
  task_before text := coalesce(current_setting('app.task', true), '');
  household uuid := book.current_household();
begin
  perform set_config('app.task', 'lids', true);
  return query
    with jar as (
      select c.storehouse_id, c.container_id, c.household_id, c.packed_on, s.time_zone, l.packing_session_id, l.closed_at,
        coalesce((select p.place_id is not null and o.household_id is null from book.container_place p
            left join book.place o on o.storehouse_id = p.storehouse_id and o.place_id = p.place_id
            where p.storehouse_id = c.storehouse_id and p.container_id = c.container_id),
          c.household_id is null or l.packing_session_id is not null) as is_in_store
      from book.container c
      join book.storehouse s on s.storehouse_id = c.storehouse_id
      join book.container_kind k on k.storehouse_id = c.storehouse_id and k.container_kind_id = c.container_kind_id
      left join book.line_closed l on l.storehouse_id = c.storehouse_id and l.container_id = c.container_id
        and l.undone_entry_id is null
      where c.storehouse_id = p_storehouse and c.packed_on >= p_since and c.opened_on is null and k.barrier = 'glass'
        and exists (select from book.account a where a.storehouse_id = c.storehouse_id and a.vessel_id = c.container_id
          and a.inflow > a.outflow))
    select j.container_id, j.household_id, j.packing_session_id, greatest(f.closed_at, again.closed_at), j.is_in_store,
      said.says, said.closed_at, said.checked_at, look.inspected_at, look.outcome
    from jar j
    -- What was poured in came out of another vessel of ours; of a hand's first pour that is written down later, the day's end counts.
    cross join lateral (select max(p.at) as closed_at from (
      select case when e.what in ('session-poured', 're-canned') and j.closed_at is not null then j.closed_at
          when e.entry_no = min(e.entry_no) over () then
            least(e.recorded_at, (j.packed_on + 1)::timestamp at time zone j.time_zone)
          else e.recorded_at end as at
        from book.account d
        join book.movement m on m.storehouse_id = d.storehouse_id and m.destination_id = d.account_id
        join book.account s on s.storehouse_id = m.storehouse_id and s.account_id = m.source_id
        join book.entry e on e.storehouse_id = m.storehouse_id and e.entry_id = m.entry_id and e.reverses_id is null
        where d.storehouse_id = j.storehouse_id and d.vessel_id = j.container_id
          and s.vessel_kind in ('bag', 'container') and s.vessel_id <> j.container_id
          and not exists (select from book.entry u where u.storehouse_id = e.storehouse_id and u.reverses_id = e.entry_id)
      ) p) f
    left join lateral (select max(a.closed_at) as closed_at from book.lid_check a
      where a.storehouse_id = j.storehouse_id and a.container_id = j.container_id and a.says = 'closed-again') again on true
    left join lateral (select a.says, a.closed_at, a.checked_at from book.lid_check a
      where a.storehouse_id = j.storehouse_id and a.container_id = j.container_id and a.says <> 'closed-again'
      order by a.lid_check_id desc limit 1) said on true
    left join lateral (select i.inspected_at, i.outcome from book.inspection i
      where i.storehouse_id = j.storehouse_id and i.container_id = j.container_id
      order by i.inspection_id desc limit 1) look on true
    where f.closed_at is not null
      and (j.household_id is null or j.household_id = household or (p_in_store and j.is_in_store));
  perform set_config('app.task', task_before, true);
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.list_looks(p_storehouse uuid, p_containers uuid[])
 RETURNS TABLE(inspection_id uuid, container_id uuid, is_own boolean, how text, findings text[], best text, outcome text, damaged_kernels integer, sample_grams integer, note text, entry_id uuid, inspected_at timestamp with time zone, inspected_on date)
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
#variable_conflict use_column
declare
  task_before text := coalesce(current_setting('app.task', true), '');
  household uuid := book.current_household();
begin
  perform set_config('app.task', 'giving', true);
  return query select i.inspection_id, i.container_id, o.is_own, i.how, i.findings, i.best, i.outcome, i.damaged_kernels,
      i.sample_grams, case when o.is_own then i.note else '' end, case when o.is_own then i.entry_id end, i.inspected_at,
      i.inspected_on
    from book.any_look i
    join book.container c on c.storehouse_id = i.storehouse_id and c.container_id = i.container_id
    cross join lateral (select i.household_id is null or i.household_id is not distinct from household as is_own) o
    where i.storehouse_id = p_storehouse and i.container_id = any(p_containers)
      and (o.is_own or c.household_id is null or c.household_id = household
        or task_before in ('giving', 'coverage-totals', 'need-first')
        or exists (select from book.offer_container f where f.storehouse_id = c.storehouse_id
          and f.container_id = c.container_id and f.ended_at is null));
  perform set_config('app.task', task_before, true);
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.list_reach(p_storehouse uuid, p_hold uuid)
 RETURNS TABLE(vessel_id uuid)
 LANGUAGE sql
 STABLE PARALLEL SAFE
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 WITH RECURSIVE h AS (
          SELECT hold.storehouse_id,
             hold.hold_id,
             hold.bag_id,
             hold.reason,
             hold.held_by,
             hold.held_at,
             hold.finding,
             hold.release_asked_by,
             hold.released_by,
             hold.released_at,
             hold.scope,
             hold.lot_id,
             hold.packing_session_id,
             hold.line,
             hold.from_serial,
             hold.to_serial,
             hold.delivery_id,
             hold.supplier_id,
             hold.supplier_mark,
             hold.food_id,
             hold.from_on,
             hold.to_on,
             hold.place_id
            FROM book.hold
           WHERE ((hold.storehouse_id = list_reach.p_storehouse) AND (hold.hold_id = list_reach.p_hold))
         ), lots AS MATERIALIZED (
          SELECT l.lot_id
            FROM (h
              JOIN book.lot l ON ((l.storehouse_id = h.storehouse_id)))
           WHERE ((l.lot_id = h.lot_id) OR ((l.supplier_id = h.supplier_id) AND (l.supplier_mark = h.supplier_mark)) OR (l.food_id = h.food_id))
         ), named AS (
          SELECT b.bag_id AS vessel_id
            FROM (h
              JOIN book.bag b ON (((b.storehouse_id = h.storehouse_id) AND (b.bag_id = h.bag_id))))
           WHERE (b.decision <> 'refused'::text)
         UNION
          SELECT b.bag_id
            FROM (h
              JOIN book.bag b ON (((b.storehouse_id = h.storehouse_id) AND (b.delivery_id = h.delivery_id))))
           WHERE (b.decision <> 'refused'::text)
         UNION
          SELECT b.bag_id
            FROM ((h
              CROSS JOIN lots l)
              CROSS JOIN LATERAL ( SELECT b_1.bag_id,
                     b_1.decision,
                     b_1.delivery_id
                    FROM book.bag b_1
                   WHERE ((b_1.storehouse_id = list_reach.p_storehouse) AND (b_1.lot_id = l.lot_id))
                  OFFSET 0) b)
           WHERE ((b.decision <> 'refused'::text) AND ((h.food_id IS NULL) OR (EXISTS ( SELECT
                    FROM book.delivery d
                   WHERE ((d.storehouse_id = list_reach.p_storehouse) AND (d.delivery_id = b.delivery_id) AND ((d.arrived_on >= h.from_on) AND (d.arrived_on <= h.to_on)))))))
         UNION
          SELECT c.container_id
            FROM ((h
              CROSS JOIN lots l)
              CROSS JOIN LATERAL ( SELECT c_1.container_id,
                     c_1.packed_on
                    FROM book.container c_1
                   WHERE ((c_1.storehouse_id = list_reach.p_storehouse) AND (c_1.lot_id = l.lot_id))
                  OFFSET 0) c)
           WHERE ((h.food_id IS NULL) OR ((c.packed_on >= h.from_on) AND (c.packed_on <= h.to_on)))
         UNION
          SELECT p.container_id
            FROM (h
              JOIN book.line_closed p ON (((p.storehouse_id = h.storehouse_id) AND (p.packing_session_id = h.packing_session_id))))
           WHERE ((p.undone_entry_id IS NULL) AND ((h.line IS NULL) OR (p.line = h.line)) AND ((h.from_serial IS NULL) OR ((p.serial >= h.from_serial) AND (p.serial <= h.to_serial))))
         UNION
          SELECT s.container_id
            FROM (h
              JOIN book.container_place s ON (((s.storehouse_id = h.storehouse_id) AND (s.place_id = h.place_id))))
           WHERE ((EXISTS ( SELECT
                    FROM book.account a
                   WHERE ((a.storehouse_id = h.storehouse_id) AND (a.vessel_id = s.container_id) AND ((a.inflow)::bigint > (a.outflow)::bigint)))) OR (NOT (EXISTS ( SELECT
                    FROM book.account a
                   WHERE ((a.storehouse_id = h.storehouse_id) AND (a.vessel_id = s.container_id) AND ((a.inflow)::bigint > 0))))))
         UNION
          SELECT v.vessel_id
            FROM (h
              JOIN book.hold_vessel v ON (((v.storehouse_id = h.storehouse_id) AND (v.hold_id = h.hold_id))))
           WHERE (h.scope = 'containers'::text)
         ), reached AS (
          SELECT n.vessel_id
            FROM named n
         UNION
          SELECT d.vessel_id
            FROM ((((reached r_1
              CROSS JOIN LATERAL ( SELECT s_1.account_id
                    FROM book.account s_1
                   WHERE ((s_1.storehouse_id = list_reach.p_storehouse) AND (s_1.vessel_id = r_1.vessel_id))
                  OFFSET 0) s)
              CROSS JOIN LATERAL ( SELECT m_1.entry_id,
                     m_1.destination_id
                    FROM book.movement m_1
                   WHERE ((m_1.storehouse_id = list_reach.p_storehouse) AND (m_1.source_id = s.account_id))
                  OFFSET 0) m)
              CROSS JOIN LATERAL ( SELECT d_1.vessel_id
                    FROM book.account d_1
                   WHERE ((d_1.storehouse_id = list_reach.p_storehouse) AND (d_1.account_id = m.destination_id) AND (d_1.vessel_kind = ANY (ARRAY['bag'::text, 'container'::text])))
                  OFFSET 0) d)
              CROSS JOIN LATERAL ( SELECT
                    FROM book.entry e_1
                   WHERE ((e_1.storehouse_id = list_reach.p_storehouse) AND (e_1.entry_id = m.entry_id) AND (e_1.reverses_id IS NULL))
                  OFFSET 0) e)
           WHERE ((d.vessel_id <> r_1.vessel_id) AND (NOT (EXISTS ( SELECT
                    FROM ( SELECT
                            FROM book.entry u_1
                           WHERE ((u_1.storehouse_id = list_reach.p_storehouse) AND (u_1.reverses_id = m.entry_id))
                          OFFSET 0) u))))
         )
  SELECT r.vessel_id
    FROM reached r;
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.lock_book()
 RETURNS bigint
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT book_state.last_entry_no
    FROM book.book_state
   WHERE (book_state.storehouse_id = book.current_storehouse())
  FOR NO KEY UPDATE OF book_state;
END
  owner sheafbook_poster
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.place_load(p_storehouse uuid, p_place uuid, p_more uuid[] DEFAULT '{}'::uuid[])
 RETURNS bigint
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  task_before text := coalesce(current_setting('app.task', true), '');
  load bigint;
begin
  perform set_config('app.task', 'place-load', true);
  select coalesce(sum(a.inflow - a.outflow), 0) into load from book.account a
    where a.storehouse_id = p_storehouse and a.vessel_kind = 'container' and a.kind = 'mass'
      and (a.vessel_id = any(p_more) or a.vessel_id in (select s.container_id from book.container_place s
        where s.storehouse_id = p_storehouse and s.place_id = p_place));
  perform set_config('app.task', task_before, true);
  return load;
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.post_entry(p_what text, p_on_day date, p_recorded_at timestamp with time zone, p_person uuid, p_entered_for uuid, p_buy uuid, p_subject uuid, p_reverses uuid, p_note text, p_units uuid[], p_sources uuid[], p_destinations uuid[], p_amounts bigint[])
 RETURNS TABLE(entry_id uuid, entry_no bigint)
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
#variable_conflict use_column
declare
  s uuid := book.current_storehouse();
  new_id uuid := uuidv7();
  new_no bigint;
  closed_day date;
  wanted integer;
  found integer;
begin
  if cardinality(p_amounts) is null or cardinality(p_amounts) = 0 then
    raise exception 'an entry needs a movement' using errcode = 'check_violation', constraint = 'entry_has_movements';
  end if;
  update book.book_state b set last_entry_no = b.last_entry_no + 1 where b.storehouse_id = s
    returning b.last_entry_no, b.closed_through into new_no, closed_day;
  if new_no is null then
    raise exception 'no book is open here' using errcode = 'check_violation', constraint = 'entry_has_a_book';
  end if;
  if p_on_day <= closed_day then
    raise exception 'the books are closed through %', closed_day
      using errcode = 'check_violation', constraint = 'entry_in_open_period';
  end if;
  with t as materialized (
    select account_id, sum(i)::bigint as i, sum(o)::bigint as o from (
      select unnest(p_destinations) as account_id, unnest(p_amounts) as i, 0::bigint as o
      union all select unnest(p_sources), 0::bigint, unnest(p_amounts)) sides
    group by account_id),
  l as materialized (
    select a.account_id from book.account a
    where a.storehouse_id = s and a.account_id in (select account_id from t)
    order by a.account_id for no key update), -- the fixed lock order
  up as (
    update book.account a set inflow = a.inflow + t.i, outflow = a.outflow + t.o
    from t join l on l.account_id = t.account_id -- the join to l makes the order hold under any plan
    where a.storehouse_id = s and a.account_id = t.account_id returning 1)
  select (select count(*) from t), (select count(*) from up) into wanted, found;
  if wanted <> found then
    raise exception 'an account of this entry is not in this storehouse'
      using errcode = 'foreign_key_violation', constraint = 'movement_source_fk';
  end if;
  if exists (
    select from unnest(p_sources, p_destinations) m (source_id, destination_id)
    join book.account f on f.storehouse_id = s and f.account_id = m.source_id and f.kind = 'mass'
    join book.account t on t.storehouse_id = s and t.account_id = m.destination_id
    where not (array[f.vessel_kind, t.vessel_kind] && array['supplier', 'discarded', 'sampled', 'spilled', 'moisture',
        'unexplained'])
      and (exists (select from book.held v where v.storehouse_id = s and v.vessel_id in (f.vessel_id, t.vessel_id))
        or f.vessel_kind = 'kitchen' and exists (select from book.held_in_kitchen k
          where k.storehouse_id = s and k.household_id = f.vessel_id and k.lot_id = f.unit_id))
      and (p_reverses is null or not exists (
        select from book.held w where w.storehouse_id = s and w.vessel_id = t.vessel_id))
      and not (p_what = 'gift-received' and t.vessel_kind = 'given' and exists (select from book.gift_line i
        where i.storehouse_id = s and i.container_id = f.vessel_id and i.is_open)))
  then
    raise exception 'something in this entry is on hold' using errcode = 'check_violation', constraint = 'nothing_held_moves';
  end if;
  insert into book.entry (storehouse_id, entry_id, entry_no, what, on_day, recorded_at, person_id, entered_for, buy_id,
    subject_id, reverses_id, note)
  values (s, new_id, new_no, p_what, p_on_day, p_recorded_at, p_person, p_entered_for, p_buy, p_subject, p_reverses, p_note);
  insert into book.movement (storehouse_id, entry_id, line, unit_id, source_id, destination_id, amount)
  select s, new_id, m.line, m.unit_id, m.source_id, m.destination_id, m.amount
  from unnest(p_units, p_sources, p_destinations, p_amounts)
    with ordinality m (unit_id, source_id, destination_id, amount, line);
  if p_reverses is not null then
    with back as (
      update book.hold_vessel v set ended_at = null
      from unnest(p_sources, p_destinations) m (source_id, destination_id)
      join book.account f on f.storehouse_id = s and f.account_id = m.source_id and f.vessel_kind in ('discarded', 'supplier')
      join book.account t on t.storehouse_id = s and t.account_id = m.destination_id
      join book.hold h on h.storehouse_id = s and h.released_by is null
      where v.storehouse_id = s and v.vessel_id = t.vessel_id and v.hold_id = h.hold_id and v.ended_at is not null
        and not exists (select from book.hold o where o.storehouse_id = s and o.bag_id = h.bag_id
          and o.hold_id <> h.hold_id and o.released_at is null)
      returning v.hold_id)
    update book.hold h set released_at = null, release_asked_by = null, finding = ''
      where h.storehouse_id = s and h.released_at is not null and h.hold_id in (select b.hold_id from back b);
  end if;
  if exists (select from book.hold h where h.storehouse_id = s and h.released_at is null and h.scope in ('place', 'food')) then
    perform book.hold_what_is_filled(p_destinations, p_recorded_at);
  end if;
  return query select new_id, new_no;
end $function$
  owner sheafbook_poster
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION book.queue_work(of_storehouse uuid, of_work uuid, due timestamp with time zone)
 RETURNS void
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare ahead integer;
begin
  select count(*) into ahead from (select from book.work w
    where w.storehouse_id = of_storehouse and w.state = 'waiting' and w.work_id <> of_work
      and (w.due_at is null or w.due_at <= now()) limit 1000) waiting;
  perform graphile_worker.add_job('work', json_build_object('storehouseId', of_storehouse, 'workId', of_work),
    queue_name := of_storehouse::text, run_at := due, max_attempts := 32767::smallint, job_key := of_work::text,
    priority := ahead::smallint);
end $function$
  owner sheafbook_owner
  execute: owner alone

CREATE OR REPLACE FUNCTION book.refuse_left_household()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare gone date;
begin
  select h.left_on into gone from book.household h
    where h.storehouse_id = new.storehouse_id and h.household_id = new.household_id for key share;
  if gone is not null then
    raise exception 'the household has left' using errcode = 'check_violation', constraint = 'household_still_here';
  end if;
  return new;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.refuse_overload()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
declare
  onto record;
begin
  for onto in select p.storehouse_id, p.place_id, p.most_grams from book.place p
    where p.most_grams is not null and (p.storehouse_id, p.place_id) in (
      select m.storehouse_id, m.place_id from moved m
        join book.container_place s on s.storehouse_id = m.storehouse_id and s.container_id = m.container_id
          and s.place_id = m.place_id
        join book.account a on a.storehouse_id = m.storehouse_id and a.vessel_id = m.container_id
        where a.inflow > a.outflow)
    order by p.place_id for no key update
  loop
    if book.place_load(onto.storehouse_id, onto.place_id) > onto.most_grams then
      raise exception 'the shelves carry % g', onto.most_grams
        using errcode = 'check_violation', constraint = 'place_carries_no_more';
    end if;
  end loop;
  return null;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.refuse_reversal_of_matched()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
begin
  if exists (select from book.bank_match m where m.storehouse_id = new.storehouse_id
      and m.entry_id = new.reverses_id and m.undone_at is null) then
    raise exception 'a line of the bank is matched with this entry'
      using errcode = 'check_violation', constraint = 'entry_not_at_the_bank';
  end if;
  return new;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.refuse_serial_twice()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
begin
  perform from book.packing_session s
    where s.storehouse_id = new.storehouse_id and s.packing_session_id = new.packing_session_id for no key update;
  if (select count(*) from book.line_closed c where c.storehouse_id = new.storehouse_id
      and c.packing_session_id = new.packing_session_id and c.line = new.line and c.serial = new.serial) > 1 then
    raise exception 'the line has closed something with this serial already'
      using errcode = 'unique_violation', constraint = 'line_serial_once';
  end if;
  return null;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.refuse_unfit_gift()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
begin
  if exists (select from book.gift_fact f where f.storehouse_id = new.storehouse_id and f.container_id = new.container_id
      and (f.is_treated_seed or f.is_mouldy))
    or exists (select from book.seal_hold h where h.storehouse_id = new.storehouse_id
      and h.container_id = new.container_id and h.disposition is null) then
    raise exception 'this may not be given' using errcode = 'check_violation', constraint = 'gift_is_fit';
  end if;
  return new;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.refuse_young_operator()
 RETURNS trigger
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
begin
  if exists (select from book.packing_hand h
    where h.storehouse_id = new.storehouse_id and h.packing_session_id = new.packing_session_id
      and h.person_id = new.checked_by and h.is_under_16) then
    raise exception 'nobody under 16 works the machine' using errcode = 'check_violation',
      constraint = 'seal_check_operator_old_enough';
  end if;
  return new;
end $function$
  owner sheafbook_owner
  execute: public

CREATE OR REPLACE FUNCTION book.retry_work(wanted uuid)
 RETURNS boolean
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
AS $function$
begin
  update book.work set state = 'waiting', tries = 0, due_at = null, ended_at = null, version = version + 1
    where storehouse_id = book.current_storehouse() and work_id = wanted and state = 'dead';
  if not found then return false; end if;
  perform book.queue_work(book.current_storehouse(), wanted, null);
  return true;
end $function$
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.add_login(wanted_email text, wanted_name text, wanted_hash text, at timestamp with time zone)
 RETURNS uuid
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 INSERT INTO door.login (email, name, password_hash, made_at)
   VALUES (add_login.wanted_email, add_login.wanted_name, add_login.wanted_hash, add_login.at)
   RETURNING login.login_id;
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.add_session(new_id text, of_login uuid, until timestamp with time zone)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 INSERT INTO door.session (session_id, login_id, expires_at)
   VALUES (add_session.new_id, add_session.of_login, add_session.until);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.change_password(of_login uuid, new_hash text)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 UPDATE door.login SET password_hash = change_password.new_hash
   WHERE (login.login_id = change_password.of_login);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.end_expired_sessions(at timestamp with time zone)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 DELETE FROM door.session
   WHERE (session.expires_at <= end_expired_sessions.at);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.end_session(wanted text)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 DELETE FROM door.session
   WHERE (session.session_id = end_session.wanted);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.end_sessions_of(of_login uuid)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 DELETE FROM door.session
   WHERE (session.login_id = end_sessions_of.of_login);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.find_calendar_feed(wanted text)
 RETURNS TABLE(calendar_feed_id uuid, storehouse_id uuid, storehouse_name text, scope text, item_kind text, item_id uuid, language text, person_id uuid, login_id uuid, household_id uuid, currency text, time_zone text)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT f.calendar_feed_id,
     f.storehouse_id,
     st.name,
     f.scope,
     f.item_kind,
     f.item_id,
     f.language,
     p.person_id,
     p.login_id,
         CASE
             WHEN (h.left_on IS NULL) THEN p.household_id
             ELSE NULL::uuid
         END AS "case",
     (st.currency)::text AS currency,
     st.time_zone
    FROM (((book.calendar_feed f
      JOIN book.storehouse st ON ((st.storehouse_id = f.storehouse_id)))
      JOIN book.person p ON (((p.storehouse_id = f.storehouse_id) AND (p.person_id = f.person_id) AND (p.left_on IS NULL) AND (p.login_id IS NOT NULL))))
      LEFT JOIN book.household h ON (((h.storehouse_id = p.storehouse_id) AND (h.household_id = p.household_id))))
   WHERE ((f.secret_sha256 = find_calendar_feed.wanted) AND (f.ended_at IS NULL));
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.find_login(wanted uuid)
 RETURNS TABLE(login_id uuid, email text, name text)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT l.login_id,
     l.email,
     l.name
    FROM door.login l
   WHERE (l.login_id = find_login.wanted);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.find_login_by_email(wanted_email text)
 RETURNS TABLE(login_id uuid, email text, name text, password_hash text)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT l.login_id,
     l.email,
     l.name,
     l.password_hash
    FROM door.login l
   WHERE (l.email = find_login_by_email.wanted_email);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.find_member(wanted text, wanted_storehouse uuid)
 RETURNS TABLE(session_id text, expires_at timestamp with time zone, login_id uuid, email text, name text, person_id uuid, household_id uuid, currency text, time_zone text, duties text[])
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT s.session_id,
     s.expires_at,
     s.login_id,
     s.email,
     s.name,
     p.person_id,
         CASE
             WHEN (h.left_on IS NULL) THEN p.household_id
             ELSE NULL::uuid
         END AS "case",
     (st.currency)::text AS currency,
     st.time_zone,
     ARRAY( SELECT d.duty
            FROM book.duty_grant d
           WHERE ((d.storehouse_id = p.storehouse_id) AND (d.person_id = p.person_id) AND (d.ended_at IS NULL))) AS "array"
    FROM (((door.find_session(find_member.wanted) s(session_id, expires_at, login_id, email, name)
      LEFT JOIN book.person p ON (((p.storehouse_id = find_member.wanted_storehouse) AND (p.login_id = s.login_id) AND (p.left_on IS NULL))))
      LEFT JOIN book.household h ON (((h.storehouse_id = p.storehouse_id) AND (h.household_id = p.household_id))))
      LEFT JOIN book.storehouse st ON ((st.storehouse_id = p.storehouse_id)));
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.find_session(wanted text)
 RETURNS TABLE(session_id text, expires_at timestamp with time zone, login_id uuid, email text, name text)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT s.session_id,
     s.expires_at,
     l.login_id,
     l.email,
     l.name
    FROM (door.session s
      JOIN door.login l USING (login_id))
   WHERE (s.session_id = find_session.wanted);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.forget_attempts(of_key text)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 DELETE FROM door.attempt
   WHERE (attempt.attempt_key = forget_attempts.of_key);
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.has_logins()
 RETURNS boolean
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
RETURN (EXISTS (SELECT FROM door.login))
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.list_sessions(of_login uuid)
 RETURNS TABLE(session_id text, expires_at timestamp with time zone)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 SELECT s.session_id,
     s.expires_at
    FROM door.session s
   WHERE (s.login_id = list_sessions.of_login)
   ORDER BY s.session_id;
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.note_attempt(of_key text, at timestamp with time zone, since timestamp with time zone)
 RETURNS integer
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 DELETE FROM door.attempt
   WHERE ((attempt.attempt_key = note_attempt.of_key) AND (attempt.attempted_at < note_attempt.since));
 INSERT INTO door.attempt (attempt_key, attempted_at)
   VALUES (note_attempt.of_key, note_attempt.at);
 SELECT (count(*))::integer AS count
    FROM door.attempt
   WHERE ((attempt.attempt_key = note_attempt.of_key) AND (attempt.attempted_at >= note_attempt.since));
END
  owner sheafbook_owner
  execute: sheafbook_app

CREATE OR REPLACE FUNCTION door.prolong_session(wanted text, until timestamp with time zone)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'pg_temp'
BEGIN ATOMIC
 UPDATE door.session SET expires_at = prolong_session.until
   WHERE (session.session_id = prolong_session.wanted);
END
  owner sheafbook_owner
  execute: sheafbook_app
