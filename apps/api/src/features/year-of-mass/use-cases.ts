import type { Tx } from '@sheafbook/db';
import { LOST_BY, yearOfMass } from '@sheafbook/ledger';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadHouseOwners } from '../storehouse/queries.ts';
import { mayReadYearOf } from './policy.ts';
import { listCrossings, sumCrossings } from './queries.ts';
import type { MassMovementsQuery, MassPart, MassQuery } from './schema.ts';

/** A calendar year of one’s own food, or of what the store holds: what came, was eaten, given and lost, and what is left. */
export function readYearOfMass(context: Context, query: MassQuery) {
  const of = yearOf(context, query);
  return inYear(context, query, async (tx, whose) => {
    const { openingGrams, flows } = await sumCrossings(tx, whose, of);
    return { ...of, of: query.of, mass: yearOfMass(openingGrams, flows) };
  });
}

/** What one number of a year is made of. */
export function readYearsMovements(context: Context, query: MassMovementsQuery) {
  const of = yearOf(context, query);
  return inYear(context, query, async (tx, whose) => ({
    ...{ ...of, of: query.of, part: query.part },
    movements: await listCrossings(tx, whose, { ...of, ...PARTS[query.part] }),
  }));
}

type Part = { readonly sides: readonly string[]; readonly way: 'in' | 'out' | 'both' };
const PARTS: Readonly<Record<MassPart, Part>> = {
  landed: { sides: ['supplier'], way: 'both' },
  'from-others': { sides: ['others'], way: 'in' },
  changed: { sides: ['transformed'], way: 'both' },
  eaten: { sides: ['eaten'], way: 'both' },
  given: { sides: ['given'], way: 'both' },
  lost: { sides: LOST_BY, way: 'both' },
  'to-others': { sides: ['others'], way: 'out' },
};

function yearOf(context: Context, { year }: { year?: number | undefined }) {
  const wanted = year ?? Number(todayOf(context).slice(0, 4));
  return { year: wanted, fromOn: `${wanted}-01-01`, toOn: `${wanted}-12-31` };
}

function inYear<Answer>(
  context: Context,
  { of }: { of: 'household' | 'store' },
  work: (tx: Tx, whose: { storehouseId: string; ownerIds: string[] }) => Promise<Answer>,
): Promise<Answer> {
  const { actor } = context;
  const { storehouseId } = actor;
  if (!mayReadYearOf(actor, of)) throw new Problem(of === 'store' ? 'duty-missing' : 'household-needed');
  return withTx(context, async (tx) => {
    if (of === 'household') {
      await noteHelpersRead(tx, context, 'stock');
      return work(tx, { storehouseId, ownerIds: [householdOf(context)] });
    }
    const { commonId, unassignedId } = await loadHouseOwners(tx, storehouseId);
    return work(tx, { storehouseId, ownerIds: [commonId, unassignedId] });
  });
}
