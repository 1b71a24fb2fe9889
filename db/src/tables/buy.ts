import { sql } from 'drizzle-orm';
import {
  bigint,
  boolean,
  date,
  integer,
  jsonb,
  primaryKey,
  text,
  timestamp,
  uuid,
} from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const buys = book.table(
  'buy',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    buyId: uuid('buy_id').notNull().default(sql`uuidv7()`),
    name: text('name').notNull(),
    stage: text('stage').notNull().default('planning'),
    gatheringClosesAt: timestamp('gathering_closes_at', { withTimezone: true, mode: 'date' }).notNull(),
    orderOn: date('order_on', { mode: 'string' }).notNull(),
    landingOn: date('landing_on', { mode: 'string' }),
    landingPlace: text('landing_place').notNull().default(''),
    rulesVersion: integer('rules_version'),
    fillId: uuid('fill_id'),
    madeBy: uuid('made_by').notNull(),
    madeAt: timestamp('made_at', { withTimezone: true, mode: 'date' }).notNull(),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.buyId] })],
);
export type BuyRow = typeof buys.$inferSelect;

export const stageMoves = book.table(
  'stage_move',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    stageMoveId: uuid('stage_move_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    fromStage: text('from_stage').notNull(),
    toStage: text('to_stage').notNull(),
    reason: text('reason').notNull().default(''),
    personId: uuid('person_id').notNull(),
    movedAt: timestamp('moved_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.stageMoveId] })],
);
export type StageMoveRow = typeof stageMoves.$inferSelect;

export const buyLines = book.table(
  'buy_line',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    foodId: uuid('food_id').notNull(),
    position: integer('position').notNull(),
    massUnit: text('mass_unit').notNull().default('lb'),
    stepUnits: integer('step_units').notNull().default(5),
    splitRule: text('split_rule'),
    commonCapGrams: bigint('common_cap_grams', { mode: 'number' }),
    quoteId: uuid('quote_id'),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.buyLineId] })],
);
export type BuyLineRow = typeof buyLines.$inferSelect;

export const quotes = book.table(
  'quote',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    quoteId: uuid('quote_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    supplierId: uuid('supplier_id').notNull(),
    reference: text('reference').notNull().default(''),
    validUntil: date('valid_until', { mode: 'string' }).notNull(),
    minimumGoodsMinorUnits: bigint('minimum_goods_minor_units', { mode: 'number' }).notNull().default(0),
    minimumGrams: bigint('minimum_grams', { mode: 'number' }).notNull().default(0),
    freightFreeFromMinorUnits: bigint('freight_free_from_minor_units', { mode: 'number' }),
    leadDays: integer('lead_days').notNull().default(0),
    cropYear: integer('crop_year'),
    moistureNote: text('moisture_note').notNull().default(''),
    foreignPriceNote: text('foreign_price_note').notNull().default(''),
    enteredBy: uuid('entered_by').notNull(),
    enteredAt: timestamp('entered_at', { withTimezone: true, mode: 'date' }).notNull(),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.quoteId] })],
);
export type QuoteRow = typeof quotes.$inferSelect;

export const quoteFreightSteps = book.table(
  'quote_freight_step',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    quoteId: uuid('quote_id').notNull(),
    fromGrams: bigint('from_grams', { mode: 'number' }).notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.quoteId, table.fromGrams] })],
);
export type QuoteFreightStepRow = typeof quoteFreightSteps.$inferSelect;

export const bagOffers = book.table(
  'bag_offer',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bagOfferId: uuid('bag_offer_id').notNull().default(sql`uuidv7()`),
    quoteId: uuid('quote_id').notNull(),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    bagSize: integer('bag_size').notNull(),
    bagGrams: bigint('bag_grams', { mode: 'number' }).notNull(),
    bagLabel: text('bag_label').notNull(),
    breakKind: text('break_kind').notNull().default('all-units'),
    mostBags: integer('most_bags'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bagOfferId] })],
);
export type BagOfferRow = typeof bagOffers.$inferSelect;

export const priceBreaks = book.table(
  'price_break',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bagOfferId: uuid('bag_offer_id').notNull(),
    fromBags: integer('from_bags').notNull(),
    bagPriceMinorUnits: bigint('bag_price_minor_units', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bagOfferId, table.fromBags] })],
);
export type PriceBreakRow = typeof priceBreaks.$inferSelect;

export const pledges = book.table(
  'pledge',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    pledgeId: uuid('pledge_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    householdId: uuid('household_id').notNull(),
    leastGrams: bigint('least_grams', { mode: 'number' }).notNull(),
    wantedGrams: bigint('wanted_grams', { mode: 'number' }).notNull(),
    mostGrams: bigint('most_grams', { mode: 'number' }).notNull(),
    wholeBags: boolean('whole_bags').notNull(),
    substituteLineId: uuid('substitute_line_id'),
    asTyped: text('as_typed').notNull().default(''),
    pledgedAt: timestamp('pledged_at', { withTimezone: true, mode: 'date' }).notNull(),
    rankedAt: timestamp('ranked_at', { withTimezone: true, mode: 'date' }).notNull(),
    enteredBy: uuid('entered_by').notNull(),
    isEnteredFor: boolean('is_entered_for').notNull().default(false),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.pledgeId] })],
);
export type PledgeRow = typeof pledges.$inferSelect;

export const pledgeCeilings = book.table(
  'pledge_ceiling',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    pledgeId: uuid('pledge_id').notNull(),
    householdId: uuid('household_id').notNull(),
    ceilingMinorUnits: bigint('ceiling_minor_units', { mode: 'number' }).notNull(),
    perGrams: bigint('per_grams', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.pledgeId] })],
);
export type PledgeCeilingRow = typeof pledgeCeilings.$inferSelect;

export const fills = book.table(
  'fill',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    fillId: uuid('fill_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    answer: jsonb('answer').notNull(),
    methodVersion: integer('method_version').notNull(),
    overrideReason: text('override_reason').notNull().default(''),
    madeBy: uuid('made_by').notNull(),
    madeAt: timestamp('made_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.fillId] })],
);
export type FillRow = typeof fills.$inferSelect;

export const fillInputs = book.table(
  'fill_inputs',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    fillId: uuid('fill_id').notNull(),
    inputs: jsonb('inputs').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.fillId] })],
);
export type FillInputsRow = typeof fillInputs.$inferSelect;

export const fixedBags = book.table(
  'fixed_bags',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    bagOfferId: uuid('bag_offer_id').notNull(),
    bags: integer('bags').notNull(),
    goodsMinorUnits: bigint('goods_minor_units', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.buyId, table.buyLineId, table.bagOfferId] })],
);
export type FixedBagsRow = typeof fixedBags.$inferSelect;

export const allotments = book.table(
  'allotment',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    ownerId: uuid('owner_id').notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
    units: integer('units').notNull(),
    wholeBags: boolean('whole_bags').notNull().default(false),
    isDropped: boolean('is_dropped').notNull().default(false),
    droppedBecause: text('dropped_because').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.buyLineId, table.ownerId] })],
);
export type AllotmentRow = typeof allotments.$inferSelect;

export const depositAsks = book.table(
  'deposit_ask',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    buyId: uuid('buy_id').notNull(),
    householdId: uuid('household_id').notNull(),
    estimateMinorUnits: bigint('estimate_minor_units', { mode: 'number' }).notNull(),
    askedMinorUnits: bigint('asked_minor_units', { mode: 'number' }).notNull(),
    dueOn: date('due_on', { mode: 'string' }).notNull(),
    waivedBy: uuid('waived_by'),
    waiverReason: text('waiver_reason').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.buyId, table.householdId] })],
);
export type DepositAskRow = typeof depositAsks.$inferSelect;

export const orderConsents = book.table(
  'order_consent',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    buyId: uuid('buy_id').notNull(),
    duty: text('duty').notNull(),
    personId: uuid('person_id').notNull(),
    agreedAt: timestamp('agreed_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.buyId, table.duty] })],
);
export type OrderConsentRow = typeof orderConsents.$inferSelect;

export const supplierOrders = book.table(
  'supplier_order',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    supplierOrderId: uuid('supplier_order_id').notNull().default(sql`uuidv7()`),
    orderNo: integer('order_no').notNull(),
    buyId: uuid('buy_id').notNull(),
    supplierId: uuid('supplier_id').notNull(),
    quoteId: uuid('quote_id').notNull(),
    orderedOn: date('ordered_on', { mode: 'string' }).notNull(),
    goodsMinorUnits: bigint('goods_minor_units', { mode: 'number' }).notNull(),
    freightMinorUnits: bigint('freight_minor_units', { mode: 'number' }).notNull(),
    deliverTo: text('deliver_to').notNull().default(''),
    note: text('note').notNull().default(''),
    cancelledAt: timestamp('cancelled_at', { withTimezone: true, mode: 'date' }),
    cancellationNote: text('cancellation_note').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.supplierOrderId] })],
);
export type SupplierOrderRow = typeof supplierOrders.$inferSelect;

export const orderLines = book.table(
  'order_line',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    supplierOrderId: uuid('supplier_order_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    bagOfferId: uuid('bag_offer_id').notNull(),
    bags: integer('bags').notNull(),
    goodsMinorUnits: bigint('goods_minor_units', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.supplierOrderId, table.bagOfferId] })],
);
export type OrderLineRow = typeof orderLines.$inferSelect;

export const withdrawals = book.table(
  'withdrawal',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    withdrawalId: uuid('withdrawal_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    householdId: uuid('household_id').notNull(),
    stageThen: text('stage_then').notNull(),
    reason: text('reason').notNull(),
    answer: jsonb('answer').notNull(),
    personId: uuid('person_id').notNull(),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.withdrawalId] })],
);
export type WithdrawalRow = typeof withdrawals.$inferSelect;
