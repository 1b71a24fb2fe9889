import { sql } from 'drizzle-orm';
import { customType, integer, primaryKey, text, timestamp, uuid } from 'drizzle-orm/pg-core';
import { book } from './book.ts';

/** Bytes, which postgres.js reads and writes as a Buffer. */
const bytea = customType<{ data: Uint8Array; driverData: Buffer }>({
  dataType: () => 'bytea',
  toDriver: (bytes) => Buffer.from(bytes),
});

export const photos = book.table(
  'photo',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    photoId: uuid('photo_id').notNull().default(sql`uuidv7()`),
    buyId: uuid('buy_id'),
    bagId: uuid('bag_id'),
    claimId: uuid('claim_id'),
    deliveryId: uuid('delivery_id'),
    equipmentItemId: uuid('equipment_item_id'),
    equipmentPartId: uuid('equipment_part_id'),
    equipmentUnitId: uuid('equipment_unit_id'),
    loanId: uuid('loan_id'),
    moment: text('moment'),
    content: bytea('content').notNull(),
    widthPixels: integer('width_pixels').notNull(),
    heightPixels: integer('height_pixels').notNull(),
    note: text('note').notNull().default(''),
    addedBy: uuid('added_by').notNull(),
    addedAt: timestamp('added_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.photoId] })],
);
export type PhotoRow = typeof photos.$inferSelect;
