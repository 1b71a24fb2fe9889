import { sql } from 'drizzle-orm';
import {
  bigint,
  boolean,
  integer,
  jsonb,
  primaryKey,
  smallint,
  text,
  timestamp,
  uuid,
} from 'drizzle-orm/pg-core';
import { book } from './book.ts';

/** A station as the database keeps it; see `Station` of the package `packing`. */
export type StationRow = {
  readonly name: string;
  readonly secondsPerUnit: number;
  readonly staysAlone: boolean;
};

export const packingSessions = book.table(
  'packing_session',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingSessionId: uuid('packing_session_id').notNull().default(sql`uuidv7()`),
    name: text('name').notNull(),
    place: text('place').notNull().default(''),
    startsAt: timestamp('starts_at', { withTimezone: true, mode: 'date' }).notNull(),
    endsAt: timestamp('ends_at', { withTimezone: true, mode: 'date' }).notNull(),
    lines: smallint('lines').notNull(),
    peopleALine: smallint('people_a_line').notNull(),
    stations: jsonb('stations').$type<readonly StationRow[]>().notNull(),
    setupMinutes: smallint('setup_minutes').notNull(),
    breakMinutes: smallint('break_minutes').notNull(),
    cleanDownMinutes: smallint('clean_down_minutes').notNull(),
    lineFeeMinorUnits: bigint('line_fee_minor_units', { mode: 'number' }).notNull(),
    stage: text('stage').notNull().default('open'),
    version: integer('version').notNull().default(1),
    createdBy: uuid('created_by').notNull(),
    createdAt: timestamp('created_at', { withTimezone: true, mode: 'date' }).notNull(),
    signedBy: uuid('signed_by'),
    signedAt: timestamp('signed_at', { withTimezone: true, mode: 'date' }),
    endedBecause: text('ended_because').notNull().default(''),
    startedAt: timestamp('started_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.packingSessionId] })],
);
export type PackingSessionRow = typeof packingSessions.$inferSelect;

export const packingWishes = book.table(
  'packing_wish',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingWishId: uuid('packing_wish_id').notNull().default(sql`uuidv7()`),
    packingSessionId: uuid('packing_session_id').notNull(),
    householdId: uuid('household_id').notNull(),
    foodId: uuid('food_id').notNull(),
    containerKindId: uuid('container_kind_id').notNull(),
    treatment: text('treatment').notNull(),
    containers: integer('containers').notNull(),
    gramsEach: bigint('grams_each', { mode: 'number' }).notNull(),
    position: integer('position').notNull(),
    enteredBy: uuid('entered_by').notNull(),
    mayMix: boolean('may_mix').notNull().default(false),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.packingWishId] })],
);
export type PackingWishRow = typeof packingWishes.$inferSelect;

export const packingSlots = book.table(
  'packing_slot',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingSlotId: uuid('packing_slot_id').notNull().default(sql`uuidv7()`),
    packingSessionId: uuid('packing_session_id').notNull(),
    householdId: uuid('household_id').notNull(),
    line: smallint('line'),
    startsAt: timestamp('starts_at', { withTimezone: true, mode: 'date' }).notNull(),
    endsAt: timestamp('ends_at', { withTimezone: true, mode: 'date' }).notNull(),
    state: text('state').notNull(),
    askedAt: timestamp('asked_at', { withTimezone: true, mode: 'date' }).notNull(),
    askedBy: uuid('asked_by').notNull(),
    cameAt: timestamp('came_at', { withTimezone: true, mode: 'date' }),
    freedAt: timestamp('freed_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.packingSlotId] })],
);
export type PackingSlotRow = typeof packingSlots.$inferSelect;

export const packingHands = book.table(
  'packing_hand',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingSessionId: uuid('packing_session_id').notNull(),
    personId: uuid('person_id').notNull(),
    state: text('state').notNull(),
    maySeam: boolean('may_seam').notNull(),
    mayLift: boolean('may_lift').notNull(),
    seatedOnly: boolean('seated_only').notNull().default(false),
    isUnder16: boolean('is_under_16').notNull().default(false),
    saidAt: timestamp('said_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.packingSessionId, table.personId] })],
);
export type PackingHandRow = typeof packingHands.$inferSelect;
export const packingBags = book.table(
  'packing_bag',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingSessionId: uuid('packing_session_id').notNull(),
    bagId: uuid('bag_id').notNull(),
    householdId: uuid('household_id').notNull(),
    broughtGrams: bigint('brought_grams', { mode: 'number' }).notNull(),
    broughtBy: uuid('brought_by').notNull(),
    broughtAt: timestamp('brought_at', { withTimezone: true, mode: 'date' }).notNull(),
    leftGrams: bigint('left_grams', { mode: 'number' }),
    differenceBecause: text('difference_because').notNull().default(''),
    wasTenths: integer('was_tenths'),
    isTenths: integer('is_tenths'),
  },
  (table) => [
    primaryKey({ columns: [table.storehouseId, table.packingSessionId, table.bagId, table.householdId] }),
  ],
);
export type PackingBagRow = typeof packingBags.$inferSelect;

export const packingPours = book.table(
  'packing_pour',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingPourId: uuid('packing_pour_id').notNull().default(sql`uuidv7()`),
    packingSessionId: uuid('packing_session_id').notNull(),
    line: smallint('line').notNull(),
    serial: integer('serial').notNull(),
    householdId: uuid('household_id').notNull(),
    bagId: uuid('bag_id').notNull(),
    containerId: uuid('container_id').notNull(),
    targetGrams: bigint('target_grams', { mode: 'number' }).notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
    treatment: text('treatment').notNull(),
    entryId: uuid('entry_id').notNull(),
    pouredBy: uuid('poured_by').notNull(),
    pouredAt: timestamp('poured_at', { withTimezone: true, mode: 'date' }).notNull(),
    recordedAt: timestamp('recorded_at', { withTimezone: true, mode: 'date' }).notNull(),
    undoneEntryId: uuid('undone_entry_id'),
    absorberMillilitres: integer('absorber_millilitres'),
    weighedHow: text('weighed_how').notNull().default('net'),
    grossGrams: bigint('gross_grams', { mode: 'number' }),
    tareGrams: bigint('tare_grams', { mode: 'number' }),
    containerTareId: uuid('container_tare_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.packingPourId] })],
);
export type PackingPourRow = typeof packingPours.$inferSelect;

/** What ten empties of a kind weigh; only added to. */
export const containerTares = book.table(
  'container_tare',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerTareId: uuid('container_tare_id').notNull().default(sql`uuidv7()`),
    containerKindId: uuid('container_kind_id').notNull(),
    readings: integer('readings').array().notNull(),
    weighedBy: uuid('weighed_by').notNull(),
    weighedAt: timestamp('weighed_at', { withTimezone: true, mode: 'date' }).notNull(),
    recordedAt: timestamp('recorded_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerTareId] })],
);
export type ContainerTareRow = typeof containerTares.$inferSelect;

/** When something was spilled or sampled at a line; what it came to stands in its entry. */
export const packingLosses = book.table(
  'packing_loss',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    entryId: uuid('entry_id').notNull(),
    packingSessionId: uuid('packing_session_id').notNull(),
    bagId: uuid('bag_id').notNull(),
    householdId: uuid('household_id').notNull(),
    lostAt: timestamp('lost_at', { withTimezone: true, mode: 'date' }).notNull(),
    recordedAt: timestamp('recorded_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.entryId] })],
);

/** A view: everything that a line closed, poured or filled anew, each with its serial; what was taken back too. */
export const lineClosed = book
  .view('line_closed', {
    storehouseId: uuid('storehouse_id').notNull(),
    packingSessionId: uuid('packing_session_id').notNull(),
    line: smallint('line').notNull(),
    serial: integer('serial').notNull(),
    containerId: uuid('container_id').notNull(),
    householdId: uuid('household_id').notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
    closedAt: timestamp('closed_at', { withTimezone: true, mode: 'date' }).notNull(),
    undoneEntryId: uuid('undone_entry_id'),
  })
  .existing();

export const packingStood = book.table(
  'packing_stood',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingSessionId: uuid('packing_session_id').notNull(),
    personId: uuid('person_id').notNull(),
    station: text('station').notNull(),
    spells: smallint('spells').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.storehouseId, table.packingSessionId, table.personId, table.station] }),
  ],
);

export const packingQueues = book.table(
  'packing_queue',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingQueueId: uuid('packing_queue_id').notNull().default(sql`uuidv7()`),
    packingSessionId: uuid('packing_session_id').notNull(),
    line: smallint('line').notNull(),
    station: text('station').notNull(),
    waiting: smallint('waiting').notNull(),
    saidBy: uuid('said_by').notNull(),
    saidAt: timestamp('said_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.packingQueueId] })],
);
export type PackingQueueRow = typeof packingQueues.$inferSelect;

export const absorberPacks = book.table(
  'absorber_pack',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    absorberPackId: uuid('absorber_pack_id').notNull().default(sql`uuidv7()`),
    packingSessionId: uuid('packing_session_id').notNull(),
    sizeMillilitres: integer('size_millilitres').notNull(),
    packets: integer('packets').notNull(),
    openedAt: timestamp('opened_at', { withTimezone: true, mode: 'date' }).notNull(),
    openedBy: uuid('opened_by').notNull(),
    shutAt: timestamp('shut_at', { withTimezone: true, mode: 'date' }),
    packetsLeft: integer('packets_left'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.absorberPackId] })],
);
export type AbsorberPackRow = typeof absorberPacks.$inferSelect;

export const packingMixes = book.table(
  'packing_mix',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    packingMixId: uuid('packing_mix_id').notNull().default(sql`uuidv7()`),
    packingSessionId: uuid('packing_session_id').notNull(),
    line: smallint('line').notNull(),
    lotId: uuid('lot_id').notNull(),
    containerKindId: uuid('container_kind_id').notNull(),
    treatment: text('treatment').notNull(),
    gramsEach: bigint('grams_each', { mode: 'number' }).notNull(),
    wishIds: uuid('wish_ids').array().notNull(),
    shares: jsonb('shares').notNull(),
    entryId: uuid('entry_id').notNull(),
    postedBy: uuid('posted_by').notNull(),
    postedAt: timestamp('posted_at', { withTimezone: true, mode: 'date' }).notNull(),
    undoneEntryId: uuid('undone_entry_id'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.packingMixId] })],
);
export type PackingMixRow = typeof packingMixes.$inferSelect;
