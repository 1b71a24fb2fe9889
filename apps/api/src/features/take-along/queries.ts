import type { Tx } from '@sheafbook/db';
import {
  dutyGrants,
  eaters,
  helperGrants,
  householdContacts,
  householdGuidelines,
  householdPlans,
  households,
  notices,
  persons,
  privateReads,
} from '@sheafbook/db/tables';
import { and, eq } from 'drizzle-orm';
import { joinOn } from '../../platform/join-on.ts';

/** Whose data are taken along; every statement here is about this one household. */
export type Subject = { readonly storehouseId: string; readonly householdId: string };

/** Whether a row of a table with a household is this one's. */
const isOf = (
  table:
    | typeof eaters
    | typeof householdContacts
    | typeof helperGrants
    | typeof notices
    | typeof privateReads
    | typeof persons,
  { storehouseId, householdId }: Subject,
) => and(eq(table.storehouseId, storehouseId), eq(table.householdId, householdId));

export function listHousehold(tx: Tx, { storehouseId, householdId }: Subject) {
  const { name, seat, joinedOn, leftOn } = households;
  return tx
    .select({ householdId: households.householdId, name, seat, joinedOn, leftOn })
    .from(households)
    .where(and(eq(households.storehouseId, storehouseId), eq(households.householdId, householdId)));
}

export function listContact(tx: Tx, subject: Subject) {
  const { phone, address, email, shownToMembers } = householdContacts;
  return tx
    .select({ phone, address, email, shownToMembers })
    .from(householdContacts)
    .where(isOf(householdContacts, subject));
}

export function listPersons(tx: Tx, subject: Subject) {
  const { personId, name, joinedOn, leftOn } = persons;
  return tx
    .select({ personId, name, joinedOn, leftOn })
    .from(persons)
    .where(isOf(persons, subject))
    .orderBy(personId);
}

export function listDuties(tx: Tx, subject: Subject) {
  const { duty, grantedAt, endedAt } = dutyGrants;
  return tx
    .select({ personId: persons.personId, personName: persons.name, duty, grantedAt, endedAt })
    .from(dutyGrants)
    .innerJoin(persons, joinOn(persons, dutyGrants, 'personId'))
    .where(isOf(persons, subject))
    .orderBy(dutyGrants.dutyGrantId);
}

export function listEaters(tx: Tx, subject: Subject) {
  return tx
    .select({
      eaterId: eaters.eaterId,
      name: eaters.name,
      birthOn: eaters.birthOn,
      sex: eaters.sex,
      activity: eaters.activity,
      presentPercent: eaters.presentPercent,
      heightCentimetres: eaters.heightCentimetres,
      massKilograms: eaters.massKilograms,
      typedKilocalories: eaters.typedKilocalories,
      excludedAllergens: eaters.excludedAllergens,
      excludedFoodCodes: eaters.excludedFoodCodes,
      avoidsGluten: eaters.avoidsGluten,
    })
    .from(eaters)
    .where(isOf(eaters, subject))
    .orderBy(eaters.eaterId);
}

export function listPlan(tx: Tx, { storehouseId, householdId }: Subject) {
  const { needBasis, targetDays, targetGroups, addYear } = householdPlans;
  return tx
    .select({ needBasis, targetDays, targetGroups, addYear })
    .from(householdPlans)
    .where(and(eq(householdPlans.storehouseId, storehouseId), eq(householdPlans.householdId, householdId)));
}

export function listGuidelines(tx: Tx, { storehouseId, householdId }: Subject) {
  const { foodGroup, gramsPerAdultYear } = householdGuidelines;
  return tx
    .select({ foodGroup, gramsPerAdultYear })
    .from(householdGuidelines)
    .where(
      and(
        eq(householdGuidelines.storehouseId, storehouseId),
        eq(householdGuidelines.householdId, householdId),
      ),
    )
    .orderBy(foodGroup);
}

export function listHelpers(tx: Tx, subject: Subject) {
  const { reason, grantedAt, expiresAt, endedAt } = helperGrants;
  return tx
    .select({ helperName: persons.name, reason, grantedAt, expiresAt, endedAt })
    .from(helperGrants)
    .innerJoin(persons, joinOn(persons, helperGrants, 'personId'))
    .where(isOf(helperGrants, subject))
    .orderBy(helperGrants.helperGrantId);
}

export function listPrivateReads(tx: Tx, subject: Subject) {
  const { what, purpose, readAt } = privateReads;
  return tx
    .select({ readerName: persons.name, what, purpose, readAt })
    .from(privateReads)
    .innerJoin(persons, joinOn(persons, privateReads, 'personId'))
    .where(isOf(privateReads, subject))
    .orderBy(privateReads.privateReadId);
}

/** What was told to this household alone. */
export function listNotices(tx: Tx, subject: Subject) {
  const { about, says, dueOn, isSafety, writtenAt } = notices;
  return tx
    .select({ about, says, dueOn, isSafety, writtenAt })
    .from(notices)
    .where(isOf(notices, subject))
    .orderBy(notices.noticeId);
}
