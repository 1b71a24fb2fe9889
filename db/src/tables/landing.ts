import { sql } from 'drizzle-orm';
import {
  bigint,
  boolean,
  date,
  integer,
  primaryKey,
  smallint,
  text,
  timestamp,
  uuid,
} from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const lots = book.table(
  'lot',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    lotId: uuid('lot_id').notNull(),
    unitKind: text('unit_kind').notNull().default('lot'),
    foodId: uuid('food_id').notNull(),
    buyLineId: uuid('buy_line_id'),
    supplierId: uuid('supplier_id'),
    supplierMark: text('supplier_mark').notNull().default(''),
    harvestYear: integer('harvest_year'),
    originNote: text('origin_note').notNull().default(''),
    madeOn: date('made_on', { mode: 'string' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.lotId] })],
);
export type LotRow = typeof lots.$inferSelect;

export const deliveries = book.table(
  'delivery',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    deliveryId: uuid('delivery_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    supplierId: uuid('supplier_id').notNull(),
    partNo: integer('part_no').notNull(),
    carrier: text('carrier').notNull().default(''),
    arrivedOn: date('arrived_on', { mode: 'string' }).notNull(),
    carrierNote: text('carrier_note').notNull().default(''),
    countedBy: text('counted_by').notNull().default(''),
    enteredBy: uuid('entered_by').notNull(),
    enteredAt: timestamp('entered_at', { withTimezone: true, mode: 'date' }).notNull(),
    finishedAt: timestamp('finished_at', { withTimezone: true, mode: 'date' }),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.deliveryId] })],
);
export type DeliveryRow = typeof deliveries.$inferSelect;

export const deliveryCounts = book.table(
  'delivery_count',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    deliveryId: uuid('delivery_id').notNull(),
    bagOfferId: uuid('bag_offer_id').notNull(),
    countedBags: integer('counted_bags').notNull(),
    note: text('note').notNull().default(''),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.deliveryId, table.bagOfferId] })],
);
export type DeliveryCountRow = typeof deliveryCounts.$inferSelect;

export const bags = book.table(
  'bag',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    bagId: uuid('bag_id').notNull(),
    vesselKind: text('vessel_kind').notNull().default('bag'),
    bagCode: text('bag_code').notNull(),
    bagNo: integer('bag_no').notNull(),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id').notNull(),
    deliveryId: uuid('delivery_id').notNull(),
    bagOfferId: uuid('bag_offer_id').notNull(),
    lotId: uuid('lot_id').notNull(),
    declaredGrams: bigint('declared_grams', { mode: 'number' }).notNull(),
    grossGrams: bigint('gross_grams', { mode: 'number' }),
    tareGrams: bigint('tare_grams', { mode: 'number' }),
    netGrams: bigint('net_grams', { mode: 'number' }).notNull(),
    condition: text('condition').notNull().default('dry'),
    moistureTenthsPercent: integer('moisture_tenths_percent'),
    decision: text('decision').notNull().default('accepted'),
    note: text('note').notNull().default(''),
    isExemptFromWeighing: boolean('is_exempt_from_weighing').notNull().default(false),
    weighedAt: timestamp('weighed_at', { withTimezone: true, mode: 'date' }),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.bagId] })],
);
export type BagRow = typeof bags.$inferSelect;

export const holds = book.table(
  'hold',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    holdId: uuid('hold_id').notNull().default(sql`uuidv7()`),
    bagId: uuid('bag_id'),
    reason: text('reason').notNull(),
    heldBy: uuid('held_by').notNull(),
    heldAt: timestamp('held_at', { withTimezone: true, mode: 'date' }).notNull(),
    finding: text('finding').notNull().default(''),
    releaseAskedBy: uuid('release_asked_by'),
    releasedBy: uuid('released_by'),
    releasedAt: timestamp('released_at', { withTimezone: true, mode: 'date' }),
    scope: text('scope').notNull().default('bag'),
    lotId: uuid('lot_id'),
    packingSessionId: uuid('packing_session_id'),
    line: smallint('line'),
    fromSerial: integer('from_serial'),
    toSerial: integer('to_serial'),
    deliveryId: uuid('delivery_id'),
    supplierId: uuid('supplier_id'),
    supplierMark: text('supplier_mark'),
    foodId: uuid('food_id'),
    fromOn: date('from_on', { mode: 'string' }),
    toOn: date('to_on', { mode: 'string' }),
    placeId: uuid('place_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.holdId] })],
);
export type HoldRow = typeof holds.$inferSelect;

export const holdVessels = book.table(
  'hold_vessel',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    holdId: uuid('hold_id').notNull(),
    vesselId: uuid('vessel_id').notNull(),
    reachedAt: timestamp('reached_at', { withTimezone: true, mode: 'date' }).notNull(),
    endedAt: timestamp('ended_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.holdId, table.vesselId] })],
);
export type HoldVesselRow = typeof holdVessels.$inferSelect;

export const holdAnswers = book.table(
  'hold_answer',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    holdId: uuid('hold_id').notNull(),
    householdId: uuid('household_id').notNull(),
    hasSome: boolean('has_some').notNull(),
    eatenOn: date('eaten_on', { mode: 'string' }),
    givenOn: date('given_on', { mode: 'string' }),
    note: text('note').notNull().default(''),
    answeredBy: uuid('answered_by').notNull(),
    answeredAt: timestamp('answered_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.holdId, table.householdId] })],
);
export type HoldAnswerRow = typeof holdAnswers.$inferSelect;

/** The slip of a recall notice as it came back on paper, of a household or of a pantry. */
export const holdSlips = book.table(
  'hold_slip',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    holdSlipId: uuid('hold_slip_id').notNull().default(sql`uuidv7()`),
    holdId: uuid('hold_id').notNull(),
    householdId: uuid('household_id'),
    pantryId: uuid('pantry_id'),
    signedBy: text('signed_by').notNull(),
    writtenOn: date('written_on', { mode: 'string' }).notNull(),
    note: text('note').notNull().default(''),
    keyedBy: uuid('keyed_by').notNull(),
    keyedAt: timestamp('keyed_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.holdSlipId] })],
);

export const holdSlipLines = book.table(
  'hold_slip_line',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    holdSlipId: uuid('hold_slip_id').notNull(),
    vesselId: uuid('vessel_id').notNull(),
    became: text('became').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.holdSlipId, table.vesselId] })],
);

/** A view: whatever may not move, each once for every hold on it; of a seam or seal in doubt the hold is null. */
export const held = book
  .view('held', {
    storehouseId: uuid('storehouse_id').notNull(),
    vesselId: uuid('vessel_id').notNull(),
    holdId: uuid('hold_id'),
    reason: text('reason'),
  })
  .existing();

/** A view: each lot in a kitchen of which some came out of what a standing hold reached, once for each such hold. */
export const heldInKitchen = book
  .view('held_in_kitchen', {
    storehouseId: uuid('storehouse_id').notNull(),
    householdId: uuid('household_id').notNull(),
    lotId: uuid('lot_id').notNull(),
    holdId: uuid('hold_id').notNull(),
    reason: text('reason').notNull(),
  })
  .existing();

export const claims = book.table(
  'claim',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    claimId: uuid('claim_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    supplierId: uuid('supplier_id').notNull(),
    buyLineId: uuid('buy_line_id'),
    kind: text('kind').notNull(),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
    because: text('because').notNull(),
    state: text('state').notNull().default('open'),
    raisedOn: date('raised_on', { mode: 'string' }).notNull(),
    raisedBy: uuid('raised_by').notNull(),
    settledOn: date('settled_on', { mode: 'string' }),
    creditedMinorUnits: bigint('credited_minor_units', { mode: 'number' }).notNull().default(0),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.claimId] })],
);
export type ClaimRow = typeof claims.$inferSelect;

export const invoices = book.table(
  'invoice',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    invoiceId: uuid('invoice_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id').notNull(),
    supplierId: uuid('supplier_id').notNull(),
    number: text('number').notNull(),
    onDay: date('on_day', { mode: 'string' }).notNull(),
    foreignNote: text('foreign_note').notNull().default(''),
    enteredBy: uuid('entered_by').notNull(),
    enteredAt: timestamp('entered_at', { withTimezone: true, mode: 'date' }).notNull(),
    entryId: uuid('entry_id').notNull(),
    voidedBy: uuid('voided_by'),
    voidedAt: timestamp('voided_at', { withTimezone: true, mode: 'date' }),
    voidReason: text('void_reason').notNull().default(''),
    dueOn: date('due_on', { mode: 'string' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.invoiceId] })],
);
export type InvoiceRow = typeof invoices.$inferSelect;

export const invoiceLines = book.table(
  'invoice_line',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    invoiceId: uuid('invoice_id').notNull(),
    lineNo: integer('line_no').notNull(),
    kind: text('kind').notNull(),
    buyId: uuid('buy_id').notNull(),
    buyLineId: uuid('buy_line_id'),
    minorUnits: bigint('minor_units', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.invoiceId, table.lineNo] })],
);
export type InvoiceLineRow = typeof invoiceLines.$inferSelect;

/** The two moisture readings behind a movement of a bag's grams by moisture; only added to. */
export const moistureChanges = book.table(
  'moisture_change',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    entryId: uuid('entry_id').notNull(),
    bagId: uuid('bag_id').notNull(),
    wasTenths: integer('was_tenths').notNull(),
    isTenths: integer('is_tenths').notNull(),
    bookedGrams: bigint('booked_grams', { mode: 'number' }).notNull(),
    weighedGrams: bigint('weighed_grams', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.entryId] })],
);
export type MoistureChangeRow = typeof moistureChanges.$inferSelect;
