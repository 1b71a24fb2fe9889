import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestDatabase, type TestDatabase } from '../support/database.ts';
import { readGrants } from '../support/grants.ts';

// Ledger notes 2f: a new table has no grants until they are given. Whoever gives one says so here, too.
/** What the running app may do with tables: it deletes only what holds no history, and writes no total. */
const APP_TABLES = {
  'book.account':
    'insert(account_id, cause_id, guard, kind, owner_id, storehouse_id, unit_id, unit_kind, vessel_id, vessel_kind) select',
  'book.allotment': 'delete insert select update(grams, units)',
  'book.bag':
    'insert select update(condition, decision, gross_grams, is_exempt_from_weighing, moisture_tenths_percent, net_grams, note, tare_grams, version, weighed_at)',
  'book.bag_offer': 'delete insert select',
  'book.bank_balance': 'insert select',
  'book.bank_file': 'insert select',
  'book.bank_line': 'insert select',
  'book.booking':
    'insert select update(blocked_from, blocked_to, ends_at, equipment_unit_id, offered_until, relay_agreed_at, relay_from_id, starts_at, state, uses, version)',
  'book.booking_food': 'insert select',
  'book.equipment_item':
    'delete insert select update(cautions, damage_note, deposit_minor_units, fee_minor_units, is_scale, is_thermometer, kept_where, kind_note, late_fee_minor_units, longest_days, may_relay, name, post_minutes, pre_minutes, service_every_days, service_every_uses, touches_food, value_minor_units, version)',
  'book.equipment_part':
    'insert select update(dropped_at, is_critical, name, pieces, position, value_minor_units)',
  'book.equipment_unit': 'insert select update(condition, condition_note, version)',
  'book.equipment_wish': 'insert select update(booking_id, ended_at)',
  'book.equipment_wish_food': 'insert select',
  'book.loan':
    'insert select update(brought_by, condition_in, damage_minor_units, fee_minor_units, in_at, is_late_waived, kept_minor_units, late_minor_units, note_in, parts_minor_units, refund_minor_units, refund_to, taken_back_by)',
  'book.loan_part': 'insert select update(in_pieces)',
  'book.maintenance': 'insert select',
  'book.scale_check': 'insert select',
  'book.container_tare': 'insert select',
  'book.missing_part': 'delete insert select update',
  'book.bank_match': 'insert select update(undone_at, undone_because, undone_by)',
  'book.book_state': 'insert(storehouse_id) select',
  'book.buy':
    'insert select update(fill_id, gathering_closes_at, landing_on, landing_place, name, order_on, rules_version, stage, version)',
  'book.buy_line': 'delete insert select update(common_cap_grams, quote_id, split_rule, step_units, version)',
  'book.calendar_event': 'delete insert select update(content, modified_at, sequence)',
  'book.calendar_feed': 'insert select update(ended_at, renewed_at, secret_sha256)',
  'book.cash_count': 'insert select',
  'book.charge_line': 'insert select',
  'book.charge_share': 'insert select',
  'book.claim': 'insert select update(credited_minor_units, settled_on, state, version)',
  'book.code_counter': 'insert select update(last_number)',
  'book.container':
    'insert select update(household_id, moisture_tenths, note, opened_on, packed_on, treatment)',
  'book.container_kind':
    'insert select update(barrier, is_breakable, is_dark, is_reusable, is_rodent_proof, most_stacked, needs_outer, price_minor_units, tare_grams, traits_source, version)',
  'book.container_wish': 'delete insert select',
  'book.delivery': 'insert select update(carrier, carrier_note, counted_by, finished_at, version)',
  'book.delivery_count': 'insert select update(counted_bags, note)',
  'book.deposit_ask':
    'delete insert select update(asked_minor_units, due_on, estimate_minor_units, waived_by, waiver_reason)',
  'book.duty_grant': 'insert select update(ended_at, ends_on)',
  'book.eater': 'delete insert select update',
  'book.entry': 'select',
  'book.fill': 'insert select',
  'book.fill_inputs': 'insert select',
  'book.fixed_bags': 'delete insert select',
  'book.food':
    'insert select update(allergens, bulk_micrograms_per_millilitre, carbohydrate_milligrams_per_100_grams, fat_milligrams_per_100_grams, fibre_milligrams_per_100_grams, food_code, food_group, gluten, kilocalories_per_100_grams, name_en, name_es, needs_moisture_test, protein_milligrams_per_100_grams, retired_at, source, version)',
  'book.helper_grant': 'insert select update(ended_at, reason)',
  'book.held': 'select',
  'book.held_in_kitchen': 'select',
  'book.hold': 'insert select update(finding, release_asked_by, released_at, released_by)',
  'book.hold_slip': 'insert select',
  'book.hold_slip_line': 'insert select',
  'book.notice_acknowledged': 'select',
  'book.hold_answer': 'insert select update(answered_at, answered_by, eaten_on, given_on, has_some, note)',
  'book.hold_vessel': 'insert select update(ended_at)',
  'book.household': 'insert select update(left_on, name, version)',
  'book.household_contact': 'delete insert select update',
  'book.household_guideline': 'delete insert select update',
  'book.household_plan': 'delete insert select update',
  'book.import': 'insert select',
  'book.import_file': 'insert select update(taken_back)',
  'book.import_thing': 'insert select',
  'book.import_undoing': 'insert select',
  'book.inspection': 'insert select',
  'book.lid_check': 'insert select',
  'book.any_look': 'select',
  'book.intake': 'insert select',
  'book.intake_donor': 'insert select',
  'book.donor_reading': 'insert select',
  'book.small_test': 'insert select',
  'book.invitation': 'insert select update(household_id, household_name, used_at, withdrawn_at)',
  'book.invoice': 'insert select update(void_reason, voided_at, voided_by)',
  'book.invoice_line': 'insert select',
  'book.kept_answer': 'insert select update(body, status)',
  'book.keying': 'insert select',
  'book.letter': 'delete insert select update(ended_at, sending_at, state, unsent_because)',
  'book.line_closed': 'select',
  'book.lot': 'insert select update(harvest_year)',
  'book.movement': 'select',
  'book.notice': 'delete insert select update(withdrawn_at)',
  'book.notice_reading': 'delete insert select update(acknowledged_at)',
  'book.offer': 'insert select update(goes_to_pantry, open_at)',
  'book.offer_claim': 'insert select',
  'book.offer_container': 'insert select update(ended_at, ended_how)',
  'book.offer_turn': 'delete insert select update(from_at, passed_at, until_at)',
  'book.order_consent': 'delete insert select',
  'book.order_line': 'insert select',
  'book.owner': 'insert select',
  'book.paper': 'insert select',
  'book.period_close': 'insert select',
  'book.period_signature': 'insert select',
  'book.person': 'insert select update(household_id, left_on, login_id, name)',
  'book.photo': 'delete insert select',
  'book.pick_up':
    'insert select update(collected_at, ends_at, handed_over_by, signed_by, starts_at, version)',
  'book.pick_up_piece': 'insert select',
  'book.pledge':
    'insert select update(as_typed, entered_by, is_entered_for, least_grams, most_grams, ranked_at, substitute_line_id, version, wanted_grams, whole_bags, withdrawn_at)',
  'book.gift_fact':
    'insert select update(is_mouldy, is_treated_seed, label_facts, said_at, said_by, sealed_by)',
  'book.gift_matching': 'insert select',
  'book.gift_manifest':
    'insert select update(called_off_because, entry_id, receipt_note, received_by, received_on, receiver_duty, stage, version)',
  'book.gift_line': 'insert select update(is_accepted, is_open, refused_because)',
  'book.pantry':
    'insert select update(address, card_version, contact, contact_duty, distance_metres, is_retired, name, time_zone, version)',
  'book.pantry_card': 'insert select',
  'book.pantry_opening': 'insert select',
  'book.place':
    'delete insert select update(is_damp, is_lit, is_rodent_proof, kind, most_grams, name, version)',
  'book.container_move': 'insert select',
  'book.container_place': 'select',
  'book.place_log': 'delete insert select',
  'book.place_warmth': 'delete insert select',
  'book.pledge_ceiling': 'delete insert select update',
  'book.price_break': 'delete insert select',
  'book.private_read': 'insert select',
  'book.quote':
    'insert select update(crop_year, foreign_price_note, freight_free_from_minor_units, lead_days, minimum_goods_minor_units, minimum_grams, moisture_note, reference, valid_until, version, withdrawn_at)',
  'book.quote_freight_step': 'delete insert select',
  'book.rules': 'insert select',
  'book.share': 'insert select',
  'book.share_piece': 'insert select',
  'book.split': 'insert select update(undone_at)',
  'book.split_inputs': 'insert select',
  'book.stage_move': 'insert select',
  'book.stock_count': 'insert select update(entry_id)',
  'book.stop_link': 'delete insert select',
  'book.storehouse': 'insert select update(language, mass_display, name, time_zone, version, year_end_month)',
  'book.session_cost': 'insert select',
  'book.session_settlement': 'insert select update(undone_at, undone_entry_id)',
  'book.session_share': 'insert select',
  'book.supply':
    'insert select update(is_retired, name, pack_minor_units, pack_pieces, pieces_each, version)',
  'book.supply_use_by': 'insert select',
  'book.supply_price': 'delete insert select update(price_minor_units)',
  'book.re_can': 'insert select update(undone_entry_id)',
  'book.seal_check': 'insert select',
  'book.seal_hold': 'insert select update(disposition, note, settled_at, settled_by)',
  'book.seal_machine': 'insert select update(out_since, version)',
  'book.seam_limit':
    'insert select update(body_plate, countersink_least, countersink_most, lid_plate, overlap_percent, source, thickness_least, thickness_most, width_least, width_most)',
  'book.supplier': 'insert select update(contact, name, version)',
  'book.supplier_order': 'insert select update(cancellation_note, cancelled_at)',
  'book.unit': 'insert select',
  'book.telling': 'delete insert select',
  'book.absorber_pack': 'insert select update(packets_left, shut_at)',
  'book.packing_bag': 'insert select update(difference_because, is_tenths, left_grams, was_tenths)',
  'book.moisture_change': 'insert select',
  'book.packing_hand': 'insert select update(is_under_16, may_lift, may_seam, said_at, seated_only, state)',
  'book.packing_loss': 'insert select',
  'book.packing_pour': 'insert select update(undone_entry_id)',
  'book.packing_queue': 'insert select',
  'book.packing_stood': 'insert select',
  'book.packing_session':
    'insert select update(break_minutes, clean_down_minutes, ended_because, ends_at, line_fee_minor_units, lines, name, people_a_line, place, setup_minutes, signed_at, signed_by, stage, started_at, starts_at, stations, version)',
  'book.packing_slot': 'insert select update(asked_at, came_at, ends_at, freed_at, line, starts_at, state)',
  'book.packing_mix': 'insert select update(undone_entry_id)',
  'book.packing_wish': 'delete insert select',
  'book.telling_wish':
    'delete insert select update(digest_hour, from_hour, is_email_on, language, stopped_kinds, time_zone, to_hour, version)',
  'book.vessel': 'insert select',
  'book.watch': 'insert select',
  'book.withdrawal': 'insert select',
  'book.work': 'delete select update(due_at, ended_at, last_reason, state, tries)',
  'book.shelf_price': 'insert select update(withdrawn_at)',
  'book.fund_promise': 'insert select update(entry_id, withdrawn_at, withdrawn_because, withdrawn_by)',
  'book.write_off': 'insert select update(agreed_at, agreed_by, entry_id, withdrawn_at)',
};

/** What it may run: the few ways to write the ledger, and the door. */
const APP_FUNCTIONS = {
  'book.close_account()': 'execute',
  'book.close_period()': 'execute',
  'book.current_household()': 'execute',
  'book.current_login()': 'execute',
  'book.current_storehouse()': 'execute',
  'book.current_task()': 'execute',
  'book.due_work()': 'execute',
  'book.enqueue_everywhere()': 'execute',
  'book.enqueue_work()': 'execute',
  'book.keep_house()': 'execute',
  'book.list_found_for_giving()': 'execute',
  'book.list_kept_warmth()': 'execute',
  'book.list_leaning_on_import()': 'execute',
  'book.list_looks()': 'execute',
  'book.list_lids()': 'execute',
  'book.list_reach()': 'execute',
  'book.lock_book()': 'execute',
  'book.place_load()': 'execute',
  'book.post_entry()': 'execute',
  'book.retry_work()': 'execute',
  'door.add_login()': 'execute',
  'door.add_session()': 'execute',
  'door.change_password()': 'execute',
  'door.end_expired_sessions()': 'execute',
  'door.end_session()': 'execute',
  'door.end_sessions_of()': 'execute',
  'door.find_calendar_feed()': 'execute',
  'door.find_login()': 'execute',
  'door.find_login_by_email()': 'execute',
  'door.find_member()': 'execute',
  'door.find_session()': 'execute',
  'door.forget_attempts()': 'execute',
  'door.has_logins()': 'execute',
  'door.list_sessions()': 'execute',
  'door.note_attempt()': 'execute',
  'door.prolong_session()': 'execute',
};

/** The owner of the functions that write the ledger. */
const POSTER = {
  'book.account': 'select update(closed, inflow, outflow)',
  'book.bank_match': 'select',
  'book.book_state': 'select update(closed_through, last_entry_no)',
  'book.current_household()': 'execute',
  'book.current_login()': 'execute',
  'book.current_storehouse()': 'execute',
  'book.current_task()': 'execute',
  'book.entry': 'insert select',
  'book.gift_line': 'select',
  'book.container': 'select',
  'book.container_move': 'select',
  'book.container_place': 'select',
  'book.held': 'select',
  'book.held_in_kitchen': 'select',
  'book.hold': 'select update(finding, release_asked_by, released_at)',
  'book.hold_vessel': 'insert select update(ended_at)',
  'book.hold_what_is_filled()': 'execute',
  'book.lot': 'select',
  'book.movement': 'insert select',
  'book.seal_hold': 'select',
  'book.unit': 'select',
};

/** The owner of the function that deletes what may be deleted. */
const HOUSEKEEPING = {
  'book.current_household()': 'execute',
  'book.current_login()': 'execute',
  'book.current_storehouse()': 'execute',
  'book.current_task()': 'execute',
  'book.kept_answer': 'delete select',
  'book.private_read': 'delete select',
  'book.work': 'delete select',
};

/** Functions that tell nothing but the transaction’s own settings, and triggers. */
const EVERYBODY = {
  'book.bank_match_fits()': 'execute',
  'book.container_move_fits()': 'execute',
  'book.current_household()': 'execute',
  'book.current_login()': 'execute',
  'book.current_storehouse()': 'execute',
  'book.current_task()': 'execute',
  'book.extend_holds()': 'execute',
  'book.extend_holds_at_last()': 'execute',
  'book.refuse_serial_twice()': 'execute',
  'book.refuse_left_household()': 'execute',
  'book.refuse_overload()': 'execute',
  'book.refuse_reversal_of_matched()': 'execute',
  'book.refuse_unfit_gift()': 'execute',
  'book.refuse_young_operator()': 'execute',
};

let book: TestDatabase;
beforeAll(async () => {
  book = await openTestDatabase();
});
afterAll(() => book.close());

test('2f: each role has the rights that are listed here and no other', async () => {
  const { sheafbook_app: app, ...others } = await readGrants(book.admin);
  expect(app).toEqual({ ...APP_TABLES, ...APP_FUNCTIONS });
  expect(others).toEqual({
    public: EVERYBODY,
    sheafbook_housekeeping: HOUSEKEEPING,
    sheafbook_poster: POSTER,
  });
});

test('2f: a table that was just made is nobody’s but its owner’s', async () => {
  const before = await readGrants(book.admin);
  await book.admin`create table book.diary (storehouse_id uuid, note text)`;
  expect(await readGrants(book.admin)).toEqual(before);
  await expect(book.sql`select from book.diary`).rejects.toThrow('permission denied');
});
