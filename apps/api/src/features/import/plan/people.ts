import type { eaters } from '@sheafbook/db/tables';
import { isSeatName } from '../../household/use-cases.ts';
import { email as emailAddress } from '../../session/schema.ts';
import { ACTIVITY, ALLERGEN_WORDS, NONE, SEX, YES_NO } from '../sheet/choices.ts';
import { foldText } from '../sheet/kinds.ts';
import type { RowReader } from '../sheet/row-reader.ts';
import { addHousehold, findHousehold, type Known, type KnownHousehold, keyOf } from './book.ts';
import type { Planned } from './planned.ts';

export type NewHousehold = KnownHousehold & {
  readonly personName: string;
  readonly email: string;
  readonly phone: string;
  readonly address: string;
};
export type NewEater = typeof eaters.$inferInsert & { readonly eaterId: string };

/** Signs that part the digits, and an extension; an international number has 15 digits at most (ITU-T E.164). */
const isPhone = (text: string): boolean =>
  /^\+?[\d\s()./-]+(?:\s*(?:x|ext\.?)\s*\d+)?$/i.test(text) && /^(?:\D*\d){5,20}\D*$/.test(text);

/** A household takes the next seat; one of the same name is there already and stays as it is. */
export function planHousehold(
  row: RowReader,
  known: Known,
  next: { id: string; seat: number },
): Planned<NewHousehold> {
  const name = row.needed('name') ?? '';
  const personName = row.text('person') || name;
  if (isSeatName(name)) row.refuse('name', 'seat-name');
  const email = readEmail(row);
  const phone = row.text('phone');
  if (phone !== '' && !isPhone(phone)) row.refuse('phone', 'not-a-phone');
  const address = row.text('address', 300);
  const there = known.households.byName.get(foldText(name));
  if (there) return { effect: { code: 'there', what: 'household', name: there.name, seat: there.seat } };
  const household = { ...next, name, hasLeft: false };
  addHousehold(known, household);
  return {
    effect: { code: 'new-household', name, seat: next.seat, person: personName, email },
    made: { ...household, personName, email, phone, address },
  };
}

/** One address a household, spelled as a login's is, so that the two can be compared. */
function readEmail(row: RowReader): string {
  if (row.raw('email') === '') return '';
  const read = emailAddress.safeParse(row.raw('email'));
  if (!read.success) row.refuse('email', 'not-an-email');
  return read.data ?? '';
}

/** An eater of a household in the book or in the sheets sent along. One of the same name is there already. */
export function planEater(row: RowReader, known: Known, eaterId: string): Planned<NewEater> {
  const household = namedHousehold(row, known, 'household');
  const name = row.needed('name') ?? '';
  const birthOn = row.day('birth') ?? '';
  const sex = row.raw('sex') === '' ? 'unstated' : (row.choice('sex', SEX) ?? '');
  const activity = row.raw('activity') === '' ? 'moderate' : (row.choice('activity', ACTIVITY) ?? '');
  const isWhole = row.raw('present') === '';
  const presentPercent = isWhole ? 100 : (row.number('present', { least: 0, most: 100 }) ?? 0);
  const excludedAllergens = row.choices('allergens', ALLERGEN_WORDS, NONE) ?? [];
  const avoidsGluten = row.raw('gluten') !== '' && row.choice('gluten', YES_NO) === 'yes';
  if (!household) return {};
  const key = keyOf(household.id, foldText(name));
  if (known.eaters.has(key))
    return { effect: { code: 'there', what: 'eater', name, household: household.name } };
  known.eaters.add(key);
  const facts = { name, birthOn, sex, activity, presentPercent, excludedAllergens, avoidsGluten };
  return {
    effect: { code: 'new-eater', name, household: household.name, birthOn },
    made: { storehouseId: known.storehouseId, householdId: household.id, eaterId, ...facts },
  };
}

/** The household that a cell names and that has not left. */
export function namedHousehold(row: RowReader, known: Known, column: string): KnownHousehold | undefined {
  if (row.needed(column) === undefined) return undefined;
  const household = findHousehold(known, row.raw(column));
  if (!household) return row.refuse(column, 'no-such-household');
  return household.hasLeft ? row.refuse(column, 'household-has-left') : household;
}
