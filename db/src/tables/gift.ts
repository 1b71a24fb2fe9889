import { sql } from 'drizzle-orm';
import { bigint, boolean, integer, jsonb, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';
import { day, instant } from './columns.ts';

export const giftFacts = book.table(
  'gift_fact',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    containerId: uuid('container_id').notNull(),
    sealedBy: text('sealed_by').notNull(),
    labelFacts: text('label_facts').array().notNull(),
    isTreatedSeed: boolean('is_treated_seed').notNull(),
    isMouldy: boolean('is_mouldy').notNull(),
    saidBy: uuid('said_by').notNull(),
    saidAt: instant('said_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.containerId] })],
);
export type GiftFactRow = typeof giftFacts.$inferSelect;

export const giftMatchings = book.table(
  'gift_matching',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    giftMatchingId: uuid('gift_matching_id').notNull().default(sql`uuidv7()`),
    inputs: jsonb('inputs').notNull(),
    answer: jsonb('answer').notNull(),
    madeBy: uuid('made_by').notNull(),
    madeAt: instant('made_at').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.giftMatchingId] })],
);
export type GiftMatchingRow = typeof giftMatchings.$inferSelect;

export const giftManifests = book.table(
  'gift_manifest',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    giftManifestId: uuid('gift_manifest_id').notNull().default(sql`uuidv7()`),
    manifestNo: integer('manifest_no').notNull(),
    giftMatchingId: uuid('gift_matching_id').notNull(),
    pantryId: uuid('pantry_id').notNull(),
    cardVersion: integer('card_version').notNull(),
    onDay: day('on_day').notNull(),
    driver: text('driver').notNull(),
    stage: text('stage').notNull().default('out'),
    signedOutBy: uuid('signed_out_by').notNull(),
    signedOutAt: instant('signed_out_at').notNull(),
    receivedOn: day('received_on'),
    receiverDuty: text('receiver_duty'),
    receiptNote: text('receipt_note'),
    receivedBy: uuid('received_by'),
    entryId: uuid('entry_id'),
    calledOffBecause: text('called_off_because'),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.giftManifestId] })],
);
export type GiftManifestRow = typeof giftManifests.$inferSelect;

export const giftLines = book.table(
  'gift_line',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    giftManifestId: uuid('gift_manifest_id').notNull(),
    containerId: uuid('container_id').notNull(),
    position: integer('position').notNull(),
    ownerId: uuid('owner_id').notNull(),
    grams: bigint('grams', { mode: 'number' }).notNull(),
    eatFirstOn: day('eat_first_on').notNull(),
    giftClosesOn: day('gift_closes_on').notNull(),
    warmth: text('warmth').notNull(),
    sealedBy: text('sealed_by').notNull(),
    isOpen: boolean('is_open').notNull().default(true),
    isAccepted: boolean('is_accepted'),
    refusedBecause: text('refused_because'),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.giftManifestId, table.containerId] })],
);
export type GiftLineRow = typeof giftLines.$inferSelect;
