import { LENDING_RULES, needOfPiece } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import { addDays } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { todayOf } from '../../platform/today.ts';
import { listBookings } from '../booking/queries.ts';
import { listHolders } from '../duty/queries.ts';
import { listItems } from '../equipment/queries.ts';
import { listUnitStates, mayKeepEquipment, type UnitState } from '../equipment/use-cases.ts';
import { listLoans } from '../loan/queries.ts';
import type { OpenItem } from './open-item.ts';
import { dueAtInstant } from './steps.ts';

const HOUR_MS = 3_600_000;
/** A service that falls due by its calendar is told so long ahead. Source: common practice, no source. */
const SERVICE_AHEAD_DAYS = 14;

/**
 * What the keeper of the equipment has to see to: what is late, what can't be lent as it is, what wants its service, and
 * which borrowers ask to hand straight on. Words name things only; who has them the desk shows.
 */
export async function listKeeperItems(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  if (!(await keepsEquipment(tx, context))) return [];
  const { storehouseId } = context.actor;
  const things = await listItems(tx, storehouseId, { limit: WHOLE_LIST });
  const nameOf = new Map(things.map((item) => [item.equipmentItemId, item.name]));
  const states = (await listUnitStates(tx, context, things)).filter(
    ({ unit, dueBackAt }) => unit.condition !== 'retired' && dueBackAt === null,
  );
  const at: At = {
    nameOf: ({ unit }) => `${nameOf.get(unit.equipmentItemId) ?? ''} ${unit.unitNo}`,
    nothing: { buy: null, minorUnits: null, path: `${root}/equipment-desk` },
    todayOn: todayOf(context),
  };
  return [
    ...(await listLate(tx, context, at)),
    ...states.flatMap((state) => unfitItem(state, at)),
    ...states.flatMap((state) => serviceItem(state, at)),
    ...(await listRelaysAsked(tx, context, at)),
  ];
}

type At = {
  readonly nameOf: (state: UnitState) => string;
  readonly nothing: Pick<OpenItem, 'buy' | 'minorUnits' | 'path'>;
  readonly todayOn: string;
};
const NO_DAY = { dueOn: null, dueAt: null };

/** A group without a keeper has its coordinator do it (job map 1.1). */
async function keepsEquipment(tx: Tx, { actor }: Context): Promise<boolean> {
  if (actor.duties.has('equipment_keeper')) return true;
  if (!mayKeepEquipment(actor)) return false;
  const holders = await listHolders(tx, actor.storehouseId);
  return holders.every(({ duty }) => duty !== 'equipment_keeper');
}

async function listLate(tx: Tx, context: Context, { nothing }: At): Promise<OpenItem[]> {
  const { storehouseId, timeZone } = context.actor;
  return (await listLoans(tx, storehouseId, { isOut: true }))
    .filter(({ loan }) => loan.dueAt < context.now())
    .map(({ loan, item, unit }) => {
      const about = `${item.name} ${unit.unitNo}`;
      return {
        ...{
          ...nothing,
          ...dueAtInstant(loan.dueAt, timeZone),
          kind: 'late-return',
          part: loan.loanId,
          about,
        },
        words: `Not back yet: ${about}. Ask when it comes, and tell who is next.`,
      };
    });
}

/** The part changes with the piece's own version, so that one that is dirty again is told again. */
function unfitItem(state: UnitState, { nameOf, nothing }: At): OpenItem[] {
  const { unit, missing, service } = state;
  const about = nameOf(state);
  const { condition } = unit;
  const need = needOfPiece({ condition, missing, isServiceDue: service.isDue });
  const part = `${unit.equipmentUnitId} ${unit.version}`;
  // A part that it runs without waits, and the service is told by its day.
  if (need === null || need === 'part-missing' || need === 'service-due') return [];
  return [{ ...nothing, ...NO_DAY, kind: 'unfit-equipment', part, about, words: UNFIT[need](about) }];
}

const UNFIT = {
  broken: (about: string) => `Broken: ${about}. Have it mended, or take it out of use.`,
  dirty: (about: string) => `Dirty: ${about}. Clean it before it goes out again.`,
  'critical-part-missing': (about: string) => `A part is missing without which it does not run: ${about}.`,
};

function serviceItem(state: UnitState, { nameOf, nothing, todayOn }: At): OpenItem[] {
  const { service, unit, serviceSinceOn } = state;
  const { isDue, usesLeft, daysLeft } = service;
  const isNear = daysLeft !== null && daysLeft <= SERVICE_AHEAD_DAYS;
  if (!isDue && !isNear) return [];
  const about = nameOf(state);
  const dueOn = usesLeft !== 0 && daysLeft !== null ? addDays(todayOn, daysLeft) : null;
  return [
    {
      ...{ ...nothing, dueOn, dueAt: null, kind: 'service-due', about },
      part: `${unit.equipmentUnitId} ${serviceSinceOn}`, // the next service is another one
      words: isDue
        ? `Service is due, and it takes no new loan until then: ${about}.`
        : `Service comes due: ${about}.`,
    },
  ];
}

/** Handing straight on that waits for an answer; the keeper may say no until a day before (job map 8). */
async function listRelaysAsked(tx: Tx, { actor }: Context, { nothing }: At): Promise<OpenItem[]> {
  return (await listBookings(tx, actor.storehouseId, { isOpen: true }))
    .filter(({ booking }) => booking.state === 'asked')
    .map(({ booking, item }) => {
      const untilMs = booking.startsAt.getTime() - LENDING_RULES.vetoHours * HOUR_MS;
      return {
        ...{ ...nothing, ...dueAtInstant(new Date(untilMs), actor.timeZone), kind: 'relay-asked' },
        ...{ part: booking.bookingId, about: item.name },
        words: `Two borrowers mean to hand it straight on and no answer is in yet: ${item.name}.`,
      };
    });
}
