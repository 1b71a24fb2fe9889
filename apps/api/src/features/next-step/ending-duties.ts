import type { Tx } from '@sheafbook/db';
import type { Duty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { listEndingDuties } from '../duty/use-cases.ts';
import type { OpenItem } from './open-item.ts';

/** As a sentence has them, to be said in the reader's language as a whole. */
const DUTY_WORDS: Readonly<Record<Duty, readonly [own: string, others: (name: string) => string]>> = {
  coordinator: [
    'Your duty as coordinator ends soon: hand it over.',
    (name) => `The duty of ${name} as coordinator ends soon: find who takes it over.`,
  ],
  treasurer: [
    'Your duty as treasurer ends soon: hand it over.',
    (name) => `The duty of ${name} as treasurer ends soon: find who takes it over.`,
  ],
  packing_lead: [
    'Your duty as packing lead ends soon: hand it over.',
    (name) => `The duty of ${name} as packing lead ends soon: find who takes it over.`,
  ],
  equipment_keeper: [
    'Your duty as equipment keeper ends soon: hand it over.',
    (name) => `The duty of ${name} as equipment keeper ends soon: find who takes it over.`,
  ],
  reviewer: [
    'Your duty as reviewer ends soon: hand it over.',
    (name) => `The duty of ${name} as reviewer ends soon: find who takes it over.`,
  ],
};

/** Which duty ends within 60 days (job map 3.1, question 22): for its holder, and for the coordinator, who hands it on. */
export async function listEndingItems(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  return (await listEndingDuties(tx, context)).map(({ duty, personId, name, endsOn, isOwn }) => {
    const [own, others] = DUTY_WORDS[duty as Duty];
    return {
      ...{ kind: 'duty-ends' as const, words: isOwn ? own : others(name), buy: null, about: name },
      ...{ dueOn: endsOn, dueAt: null, minorUnits: null, path: `${root}/duties` },
      part: `${duty} ${personId} ${endsOn}`,
    };
  });
}
