import { sumOf } from '@sheafbook/units';
import type { Waiting } from '../../api/outbox.ts';
import type { LogAct } from './log-act.ts';
import type { LoggedBag } from './queries.ts';

type Written = Waiting<LogAct>;
type OneBag = { readonly bagId: string; readonly householdId: string };

/** A household's part of a bag. */
export const keyOfBag = ({ bagId, householdId }: OneBag): string => `${bagId} ${householdId}`;

/** The bag that something written down is about, if any. */
function bagOf({ act }: Written): string | undefined {
  if (act.kind === 'undo') return keyOfBag(act.bag);
  return 'json' in act && 'bagId' in act.json ? keyOfBag(act.json) : undefined;
}

/** What takes back a pour, by its entry or by its key on this phone. */
export const takenBack = (waiting: readonly Written[]): ReadonlySet<string> =>
  new Set(
    waiting.flatMap(({ act, refusal }) => (act.kind === 'undo' && refusal === null ? [act.entry] : [])),
  );

/** The pours of a bag that wait on this phone and stand. What was refused is in no container, so it takes no number. */
export function poursWaiting(waiting: readonly Written[], bag: OneBag): PourWaiting[] {
  const back = takenBack(waiting);
  return waiting.flatMap(({ id, act, refusal }) =>
    refusal === null && act.kind === 'pour' && keyOfBag(act.json) === keyOfBag(bag) && !back.has(id)
      ? [{ id, act }]
      : [],
  );
}
export type PourWaiting = Pick<Written, 'id'> & { readonly act: Extract<LogAct, { kind: 'pour' }> };

/** What was brought by this phone alone so far, whether the book has refused it or not been asked. */
export const broughtHere = (waiting: readonly Written[]): ReadonlySet<string> =>
  new Set(waiting.filter(({ act }) => act.kind === 'bring').map((one) => bagOf(one) ?? ''));

/**
 * Whether something waits behind the bringing of its bag, or behind the pour that it takes back: the book can't take a pour from
 * a bag that it has refused at the line, and would refuse it for good.
 */
export const isHeld = (one: Written, all: readonly Written[]): boolean =>
  one.act.kind !== 'bring' &&
  all.some(
    (other) =>
      other.refusal !== null &&
      ((other.act.kind === 'bring' && bagOf(other) === bagOf(one)) || isOfPour(one, other)),
  );
const isOfPour = ({ act }: Written, { id }: Written): boolean => act.kind === 'undo' && act.entry === id;
/** What was refused is in no container, so taking it back puts nothing into its bag. */
const isOfRefusedPour = (one: Written, all: readonly Written[]): boolean =>
  all.some((other) => other.refusal !== null && isOfPour(one, other));

/** A bringing can't be thrown away under what waits behind it. */
export const mayDrop = (one: Written, all: readonly Written[]): boolean =>
  one.act.kind !== 'bring' || !all.some((other) => isHeld(other, all) && bagOf(other) === bagOf(one));

/** The bags at the line: by the book, and those that were brought without a signal, less what was poured from each since. */
export function bagsHere(bags: readonly LoggedBag[], waiting: readonly Written[]): LoggedBag[] {
  const known = new Map(bags.map((bag) => [keyOfBag(bag), bag]));
  for (const { act, refusal } of waiting) {
    if (act.kind !== 'bring' || refusal !== null || known.has(keyOfBag(act.bag))) continue;
    const { grams, ...bag } = act.bag;
    known.set(keyOfBag(bag), {
      ...{ ...bag, bagCode: '', moistureTenthsPercent: null, because: '', isWeighed: false },
      ...{ broughtGrams: grams, inContainersGrams: 0, spilledGrams: 0, sampledGrams: 0 },
      ...{ moistureGrams: 0, wasTenths: null, isTenths: null },
      ...{ leftInBagsGrams: grams, expectedLeftGrams: grams, unaccountedGrams: 0, toleranceGrams: 0 },
    });
  }
  return [...known.values()].map((bag) => {
    const outGrams = sumOf(
      waiting.filter((one) => bagOf(one) === keyOfBag(bag) && !isOfRefusedPour(one, waiting)).map(gramsOut),
    );
    const expectedLeftGrams = bag.expectedLeftGrams - outGrams;
    const leftInBagsGrams = bag.isWeighed ? bag.leftInBagsGrams : Math.max(expectedLeftGrams, 0);
    return { ...bag, expectedLeftGrams, leftInBagsGrams };
  });
}

/** What was refused is in no container. */
function gramsOut({ act, refusal }: Written): number {
  if (refusal !== null) return 0;
  if (act.kind === 'pour') return sumOf(act.json.grams);
  if (act.kind === 'undo') return -act.grams;
  return act.kind === 'loss' ? act.json.grams : 0;
}
