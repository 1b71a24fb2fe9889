import { sql } from 'drizzle-orm';
import {
  bigint,
  boolean,
  char,
  date,
  integer,
  jsonb,
  primaryKey,
  smallint,
  text,
  timestamp,
  uuid,
} from 'drizzle-orm/pg-core';
import { book } from './book.ts';

export const storehouses = book.table(
  'storehouse',
  {
    storehouseId: uuid('storehouse_id').notNull().default(sql`uuidv7()`),
    name: text('name').notNull(),
    currency: char('currency', { length: 3 }).notNull(),
    timeZone: text('time_zone').notNull(),
    massDisplay: text('mass_display').notNull().default('lb'),
    language: text('language').notNull().default('en'),
    version: integer('version').notNull().default(1),
    foundedAt: timestamp('founded_at', { withTimezone: true, mode: 'date' }).notNull(),
    yearEndMonth: smallint('year_end_month').notNull().default(12),
  },
  (table) => [primaryKey({ columns: [table.storehouseId] })],
);
export type StorehouseRow = typeof storehouses.$inferSelect;

export const rules = book.table(
  'rules',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    rulesVersion: integer('rules_version').notNull(),
    depositPercent: integer('deposit_percent').notNull().default(40),
    freightBasis: text('freight_basis').notNull().default('by-weight'),
    blendNumerator: integer('blend_numerator').notNull().default(1),
    blendDenominator: integer('blend_denominator').notNull().default(2),
    splitRule: text('split_rule').notNull().default('proportional'),
    commonCapGrams: bigint('common_cap_grams', { mode: 'number' }).notNull().default(0),
    levyHundredthsOfPercent: integer('levy_hundredths_of_percent').notNull().default(0),
    writeOffLimitMinorUnits: bigint('write_off_limit_minor_units', { mode: 'number' }).notNull().default(500),
    priceRisePercent: integer('price_rise_percent').notNull().default(2),
    claimWindowHours: integer('claim_window_hours').notNull().default(48),
    uncollectedDays: integer('uncollected_days').notNull().default(30),
    offerDays: integer('offer_days').notNull().default(60),
    offerDaysWithoutPantry: integer('offer_days_without_pantry').notNull().default(90),
    giftWindowDays: integer('gift_window_days').notNull().default(30),
    eatFirstMarginDays: integer('eat_first_margin_days').notNull().default(30),
    decidedBy: uuid('decided_by'),
    decidedAt: timestamp('decided_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.rulesVersion] })],
);
export type RulesRow = typeof rules.$inferSelect;

export const owners = book.table(
  'owner',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    ownerId: uuid('owner_id').notNull().default(sql`uuidv7()`),
    kind: text('kind').notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.ownerId] })],
);
export type OwnerRow = typeof owners.$inferSelect;

export const households = book.table(
  'household',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    householdId: uuid('household_id').notNull(),
    ownerKind: text('owner_kind').notNull().default('household'),
    seat: integer('seat').notNull(),
    name: text('name').notNull(),
    joinedOn: date('joined_on', { mode: 'string' }).notNull(),
    leftOn: date('left_on', { mode: 'string' }),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.householdId] })],
);
export type HouseholdRow = typeof households.$inferSelect;

export const householdContacts = book.table(
  'household_contact',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    householdId: uuid('household_id').notNull(),
    phone: text('phone').notNull().default(''),
    address: text('address').notNull().default(''),
    email: text('email').notNull().default(''),
    shownToMembers: boolean('shown_to_members').notNull().default(false),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.householdId] })],
);
export type HouseholdContactRow = typeof householdContacts.$inferSelect;

export const persons = book.table(
  'person',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    personId: uuid('person_id').notNull().default(sql`uuidv7()`),
    loginId: uuid('login_id'),
    householdId: uuid('household_id'),
    name: text('name').notNull(),
    joinedOn: date('joined_on', { mode: 'string' }).notNull(),
    leftOn: date('left_on', { mode: 'string' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.personId] })],
);
export type PersonRow = typeof persons.$inferSelect;

export const dutyGrants = book.table(
  'duty_grant',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    dutyGrantId: uuid('duty_grant_id').notNull().default(sql`uuidv7()`),
    personId: uuid('person_id').notNull(),
    duty: text('duty').notNull(),
    grantedBy: uuid('granted_by'),
    grantedAt: timestamp('granted_at', { withTimezone: true, mode: 'date' }).notNull(),
    endedAt: timestamp('ended_at', { withTimezone: true, mode: 'date' }),
    /** The day on which it is meant to end. */
    endsOn: date('ends_on', { mode: 'string' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.dutyGrantId] })],
);
export type DutyGrantRow = typeof dutyGrants.$inferSelect;

export const invitations = book.table(
  'invitation',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    invitationId: uuid('invitation_id').notNull().default(sql`uuidv7()`),
    tokenHash: text('token_hash').notNull(),
    householdId: uuid('household_id'),
    householdName: text('household_name'),
    madeBy: uuid('made_by').notNull(),
    madeAt: timestamp('made_at', { withTimezone: true, mode: 'date' }).notNull(),
    expiresAt: timestamp('expires_at', { withTimezone: true, mode: 'date' }).notNull(),
    usedAt: timestamp('used_at', { withTimezone: true, mode: 'date' }),
    withdrawnAt: timestamp('withdrawn_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.invitationId] })],
);
export type InvitationRow = typeof invitations.$inferSelect;

export const eaters = book.table(
  'eater',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    eaterId: uuid('eater_id').notNull().default(sql`uuidv7()`),
    householdId: uuid('household_id').notNull(),
    name: text('name').notNull(),
    birthOn: text('birth_on').notNull(),
    sex: text('sex').notNull().default('unstated'),
    activity: text('activity').notNull().default('moderate'),
    presentPercent: integer('present_percent').notNull().default(100),
    heightCentimetres: integer('height_centimetres'),
    massKilograms: integer('mass_kilograms'),
    typedKilocalories: integer('typed_kilocalories'),
    excludedAllergens: text('excluded_allergens').array().notNull().default([]),
    excludedFoodCodes: text('excluded_food_codes').array().notNull().default([]),
    avoidsGluten: boolean('avoids_gluten').notNull().default(false),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.eaterId] })],
);
export type EaterRow = typeof eaters.$inferSelect;

export const householdPlans = book.table(
  'household_plan',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    householdId: uuid('household_id').notNull(),
    needBasis: text('need_basis').notNull().default('guideline'),
    targetDays: integer('target_days').notNull().default(365),
    targetGroups: text('target_groups').array().notNull().default(['grains', 'legumes']),
    addYear: boolean('add_year').notNull().default(false),
    version: integer('version').notNull().default(1),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.householdId] })],
);
export type HouseholdPlanRow = typeof householdPlans.$inferSelect;

export const householdGuidelines = book.table(
  'household_guideline',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    householdId: uuid('household_id').notNull(),
    foodGroup: text('food_group').notNull(),
    gramsPerAdultYear: bigint('grams_per_adult_year', { mode: 'number' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.householdId, table.foodGroup] })],
);
export type HouseholdGuidelineRow = typeof householdGuidelines.$inferSelect;

export const helperGrants = book.table(
  'helper_grant',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    helperGrantId: uuid('helper_grant_id').notNull().default(sql`uuidv7()`),
    personId: uuid('person_id').notNull(),
    householdId: uuid('household_id').notNull(),
    reason: text('reason').notNull(),
    grantedBy: uuid('granted_by').notNull(),
    grantedAt: timestamp('granted_at', { withTimezone: true, mode: 'date' }).notNull(),
    expiresAt: timestamp('expires_at', { withTimezone: true, mode: 'date' }).notNull(),
    endedAt: timestamp('ended_at', { withTimezone: true, mode: 'date' }),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.helperGrantId] })],
);
export type HelperGrantRow = typeof helperGrants.$inferSelect;

export const privateReads = book.table(
  'private_read',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    privateReadId: uuid('private_read_id').notNull().default(sql`uuidv7()`),
    householdId: uuid('household_id').notNull(),
    personId: uuid('person_id').notNull(),
    what: text('what').notNull(),
    purpose: text('purpose').notNull(),
    readAt: timestamp('read_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.privateReadId] })],
);
export type PrivateReadRow = typeof privateReads.$inferSelect;

export const keptAnswers = book.table(
  'kept_answer',
  {
    storehouseId: uuid('storehouse_id').notNull(),
    loginId: uuid('login_id').notNull(),
    idempotencyKey: text('idempotency_key').notNull(),
    requestHash: text('request_hash').notNull(),
    status: integer('status').notNull(),
    body: jsonb('body'),
    keptAt: timestamp('kept_at', { withTimezone: true, mode: 'date' }).notNull(),
  },
  (table) => [primaryKey({ columns: [table.storehouseId, table.loginId, table.idempotencyKey] })],
);
export type KeptAnswerRow = typeof keptAnswers.$inferSelect;
