import {
  assert,
  ceilFraction,
  compareFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  sumOf,
} from '@sheafbook/units';
import { changeoverMinutes, orderFoods } from './food-order.ts';
import { type DayMinutes, daySeconds, runStarts } from './line-clock.ts';
import { type LineCrew, placeCrew, type Station } from './line-crew.ts';

/**
 * What a household wants filled alike: so many containers of one food. `carries` is what the food leaves behind on a line,
 * `mustNotMeet` what no eater of it may meet, `notBeforeSecond` when its household comes, where it booked a time, and
 * `lidWaitMinutes` how long a lid stays half open once its container is filled, as over dry ice.
 * Units: containers; seats count from 1; seconds from the start of the day; minutes. Errors: none by itself.
 */
export type LineWish = {
  readonly wishId: string;
  readonly householdId: string;
  readonly seat: number;
  readonly foodCode: string;
  readonly carries: readonly string[];
  readonly mustNotMeet: readonly string[];
  readonly containers: number;
  readonly notBeforeSecond?: number | undefined;
  readonly lidWaitMinutes?: number | undefined;
  /** Of a run that several households mix: which, and the first seat in it, so that it runs in one go. */
  readonly mix?: { readonly mixId: string; readonly seat: number } | undefined;
};

/**
 * One run of a line: a household's containers of one food. Serials count the containers that the line closes, from 1.
 * Units: minutes before it for changing over, seconds from the start of the day. Errors: none by itself.
 */
export type LineRun = {
  readonly wishId: string;
  readonly foodCode: string;
  readonly householdId: string;
  /** Those of one mix follow each other. */
  readonly mixId: string | null;
  readonly containers: number;
  readonly changeoverMinutes: number;
  readonly startsAtSecond: number;
  readonly endsAtSecond: number;
  readonly fromSerial: number;
  readonly toSerial: number;
};

/** A food that would follow what an eater of it must not meet. Units: none. Errors: none. */
export type AllergenClash = {
  readonly wishId: string;
  readonly allergen: string;
  readonly afterWishId: string;
};

/**
 * A line's day: who stands where, what runs when, and what one person more would buy.
 * Units: seconds; `finishSeconds` from the start of the day, null when the line can't run with these people; `waitSeconds` is
 * what the line stands still for households that come later than it is ready for them; `lids` has when the last lid that
 * waits may be closed, and how much longer the day lasts for it than it would without: null where no lid waits.
 * Errors: none by itself.
 */
export type LinePlan = {
  readonly crew: LineCrew | null;
  readonly runs: readonly LineRun[];
  readonly clashes: readonly AllergenClash[];
  readonly containers: number;
  readonly changeoverMinutes: number;
  readonly waitSeconds: number;
  readonly finishSeconds: number | null;
  readonly lids: { readonly lastSecond: number; readonly longerSeconds: number } | null;
  readonly withOneMore: { readonly finishSeconds: number; readonly at: readonly string[] } | null;
};

/** What a line works with. Units: people, minutes. Errors: none by itself. */
export type LineDay = Omit<DayMinutes, 'changeoverMinutes'> & {
  readonly stations: readonly Station[];
  readonly people: number;
};

/**
 * Plans one line for a day. Households come in turns, in the order of their slots; those without a slot share one turn.
 * Within a turn foods run in the order of `orderFoods`, and within a food households by seat, so that what is left in a bag
 * goes back to its owner. A food that must come before what its eaters can't meet does, where both are of one turn;
 * a clash between turns, or one that no order avoids, is listed and must be resolved before the line may run. A run begins no
 * sooner than its household comes, and people rest while the line waits, as far as that goes. The line is cleaned down while
 * lids wait; the day ends no sooner than the last of them may be closed, counted from the end of its run, with the rest before it
 * (common practice, no source).
 * Units: as `LinePlan`. Errors: AssertionError when a wish fills nothing or the day's minutes are not whole.
 */
export function planLine(turns: readonly (readonly LineWish[])[], day: LineDay): LinePlan {
  const wishes = turns.flatMap(inOrder);
  for (const { containers } of wishes) assert(containers > 0, 'a wish fills at least one container');
  const changes = listChangeovers(wishes);
  const runs = wishes.map((wish, at) => ({
    wish,
    units: wish.containers,
    changeoverMinutes: changes[at] ?? 0,
    notBeforeSecond: wish.notBeforeSecond,
  }));
  const crew = placeCrew(day.stations, day.people);
  const cycle = crew?.cycleSeconds ?? fraction(0);
  const containers = sumOf(wishes.map((wish) => wish.containers));
  const changing = sumOf(changes);
  const startsAt = (cycleSeconds: Fraction) => runStarts(runs, cycleSeconds, day.setupMinutes);
  const starts = startsAt(cycle);
  const waitSeconds = waitIn(starts);
  const endOf = (cycleSeconds: Fraction) => {
    const timed = startsAt(cycleSeconds);
    const waits = waitIn(timed);
    const restSeconds = Math.max(0, 60 * day.breakMinutes - waits);
    const working = daySeconds(containers, cycleSeconds, {
      ...day,
      changeoverMinutes: changing,
      breakMinutes: 0,
    });
    const cleanedSecond = working + waits + restSeconds;
    const lids = wishes.flatMap(({ lidWaitMinutes = 0 }, at) =>
      lidWaitMinutes > 0 ? [(timed[at]?.endsAtSecond ?? 0) + restSeconds + 60 * lidWaitMinutes] : [],
    );
    const lastSecond = lids.length === 0 ? null : Math.max(...lids);
    return { cleanedSecond, lastSecond, finishSeconds: Math.max(cleanedSecond, lastSecond ?? 0) };
  };
  const finish = (cycleSeconds: Fraction) => endOf(cycleSeconds).finishSeconds;
  const end = crew && endOf(crew.cycleSeconds);
  return {
    crew,
    runs: numbered(runs.map((run, at) => ({ ...run, ...(starts[at] as (typeof starts)[number]) }))),
    clashes: listClashes(wishes),
    containers,
    changeoverMinutes: changing,
    waitSeconds,
    finishSeconds: end?.finishSeconds ?? null,
    lids:
      end && end.lastSecond !== null
        ? { lastSecond: end.lastSecond, longerSeconds: end.finishSeconds - end.cleanedSecond }
        : null,
    withOneMore: oneMore(day, crew, finish),
  };
}

const waitIn = (starts: readonly { readonly waitSeconds: number }[]): number =>
  sumOf(starts.map(({ waitSeconds }) => waitSeconds));

/** Minutes before each run: none within a food. */
const listChangeovers = (wishes: readonly LineWish[]): number[] =>
  wishes.map((wish, at) => {
    const before = wishes[at - 1];
    return before === undefined || before.foodCode === wish.foodCode ? 0 : changeoverMinutes(before, wish);
  });

/** A turn in the order it runs: foods by changing over, households within a food by seat. */
function inOrder(turn: readonly LineWish[]): LineWish[] {
  const codes = [...new Set(turn.map(({ foodCode }) => foodCode))];
  const foods = codes.map((foodCode) => {
    const of = turn.filter((wish) => wish.foodCode === foodCode);
    const carries = of[0]?.carries ?? [];
    const mustNotMeet = [...new Set(of.flatMap((wish) => wish.mustNotMeet))];
    return { foodCode, carries, mustNotMeet, units: sumOf(of.map(({ containers }) => containers)) };
  });
  const strict = orderFoods(foods);
  // Where no order keeps everybody apart, the cheapest one is shown and its clashes are listed.
  const order = strict.isPossible ? strict : orderFoods(foods.map((food) => ({ ...food, mustNotMeet: [] })));
  assert(order.isPossible, 'foods that need not be kept apart have an order');
  return order.order.flatMap(({ foodCode }) =>
    turn
      .filter((wish) => wish.foodCode === foodCode)
      .toSorted((a, b) => seatOf(a) - seatOf(b) || a.seat - b.seat),
  );
}

/** Whoever mixes runs with the first of its mix. */
const seatOf = ({ mix, seat }: LineWish): number => mix?.seat ?? seat;

function listClashes(wishes: readonly LineWish[]): AllergenClash[] {
  return wishes.flatMap((wish, at) =>
    wish.mustNotMeet.flatMap((allergen) => {
      const before = wishes.slice(0, at + 1).find(({ carries }) => carries.includes(allergen));
      return before ? [{ wishId: wish.wishId, allergen, afterWishId: before.wishId }] : [];
    }),
  );
}

type Timed = {
  readonly wish: LineWish;
  readonly changeoverMinutes: number;
  readonly startsAtSecond: number;
  readonly endsAtSecond: number;
};

function numbered(runs: readonly Timed[]): LineRun[] {
  let closed = 0;
  return runs.map(({ wish, changeoverMinutes: minutes, startsAtSecond, endsAtSecond }) => {
    const { wishId, foodCode, householdId, containers, mix } = wish;
    const fromSerial = closed + 1;
    closed += containers;
    return {
      ...{ wishId, foodCode, householdId, mixId: mix?.mixId ?? null },
      ...{ containers, changeoverMinutes: minutes },
      ...{ startsAtSecond, endsAtSecond, fromSerial, toSerial: closed },
    };
  });
}

/** Where a further person would stand and when the line would end; null when more hands do not help. */
function oneMore(day: LineDay, now: LineCrew | null, finish: (cycleSeconds: Fraction) => number) {
  const then = placeCrew(day.stations, day.people + 1);
  if (!then || (now && compareFractions(then.cycleSeconds, now.cycleSeconds) >= 0)) return null;
  // Where the line waits for its households, a faster one may wait longer and be no sooner.
  if (now && finish(then.cycleSeconds) >= finish(now.cycleSeconds)) return null;
  const joined = then.blocks.find(
    (block) =>
      block.people > (now?.blocks.find((old) => old.stations.join() === block.stations.join())?.people ?? 0),
  );
  return { finishSeconds: finish(then.cycleSeconds), at: joined?.stations ?? [] };
}

/**
 * How long a household's own containers keep a line busy: the time to book a slot for.
 * Units: containers, minutes for changing over between its foods, whole minutes out, rounded up.
 * Errors: AssertionError when the people can't run the line.
 */
export function slotMinutes(turn: readonly LineWish[], day: Pick<LineDay, 'stations' | 'people'>): number {
  const crew = placeCrew(day.stations, day.people);
  assert(crew, 'the line runs with these people');
  const wishes = inOrder(turn);
  const containers = sumOf(wishes.map((wish) => wish.containers));
  const runningMinutes = multiplyFractions(fraction(containers, 60), crew.cycleSeconds);
  return Number(ceilFraction(runningMinutes)) + sumOf(listChangeovers(wishes));
}
