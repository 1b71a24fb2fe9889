import type { Tx } from '@sheafbook/db';
import type { TellingWishRow } from '@sheafbook/db/tables';
import type { Actor, Duty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { hashToken } from '../../platform/session.ts';
import { withTx } from '../../platform/with-tx.ts';
import type { WorkTask } from '../../platform/work/task.ts';
import { writeLetter } from '../letter/use-cases.ts';
import { openingFor } from '../next-step/use-cases.ts';
import { tellingsDue, type Wishes } from './due.ts';
import { listFacts } from './facts.ts';
import { digestOf, type LetterFrame, type LetterText, letterOf, type ReminderFact } from './letter.ts';
import {
  insertStopLink,
  insertTold,
  listDutiesNow,
  listReaders,
  listTold,
  loadPlace,
  type OwnWishes,
} from './queries.ts';
import { loadWishes } from './use-cases.ts';

type Place = { readonly name: string; readonly currency: string; readonly timeZone: string };

/**
 * Tells everybody of a storehouse what is due to be told at this moment, each as themselves: a reader's own household
 * and duties decide what is found. Who was told and the letter are written in one transaction a person, so that doing it
 * again, or twice at once, tells nothing twice.
 */
export const remind: WorkTask = {
  async reachOut({ context }) {
    const { mail, publicUrl } = context;
    if (!mail || !publicUrl) return; // nothing is marked as told, so that it is once there is e-mail
    const { place, readers } = await withTx(context, (tx) => loadPlaceAndReaders(tx, context));
    for (const actor of readers)
      await withTx(
        { ...context, actor },
        (tx) => tellOne(tx, { ...context, actor }, { place, publicUrl }),
        openingFor(actor),
      );
  },
  async settle() {},
};

async function loadPlaceAndReaders(tx: Tx, { actor }: Context) {
  const { storehouseId } = actor;
  const place = await loadPlace(tx, storehouseId);
  const held = await listDutiesNow(tx, storehouseId);
  const { currency, timeZone } = place;
  const readers = (await listReaders(tx, storehouseId)).flatMap((row): Actor[] => {
    if (row.loginId === null) return [];
    const duties = held.filter(({ personId }) => personId === row.personId).map(({ duty }) => duty as Duty);
    const { personId, loginId, householdId } = row;
    return [
      {
        ...{ storehouseId, personId, loginId, householdId, currency, timeZone },
        isHelping: false,
        duties: new Set(duties),
      },
    ];
  });
  return { place, readers };
}

async function tellOne(tx: Tx, context: Context, at: { place: Place; publicUrl: string }): Promise<void> {
  const { actor, now } = context;
  const wishes = await loadWishes(tx, actor);
  const facts = await listFacts(tx, context, wishes.language);
  const asked = { now: now(), storehouseZone: at.place.timeZone, wishes: asWishes(wishes) };
  const told = await listTold(tx, readerOf(actor), keysOf(tellingsDue(facts, { ...asked, told: new Set() })));
  const due = tellingsDue(facts, { ...asked, told });
  const fresh = await insertTold(tx, readerOf(actor), { keys: keysOf(due), at: now() });
  const links = newLinks(context, at.publicUrl);
  const frame = frameOf(actor, wishes, { ...at, stopUrlOf: links.stopUrlOf });
  const letters = due.single.filter(({ key }) => fresh.has(key)).map((telling) => letterOf(telling, frame));
  if (due.digest && fresh.has(due.digest.key)) letters.push(digestOf(due.digest.tellings, frame));
  for (const letter of letters) await send(tx, actor, letter);
  for (const link of links.made) await insertStopLink(tx, { ...link, ...readerOf(actor), madeAt: now() });
}

const readerOf = ({ storehouseId, personId }: Actor) => ({ storehouseId, personId });

const asWishes = (wishes: OwnWishes): Wishes => {
  const { timeZone, fromHour, toHour, digestHour, isEmailOn: isOn, stoppedKinds } = wishes;
  return { timeZone, fromHour, toHour, digestHour, isOn, stopped: new Set(stoppedKinds) };
};

const keysOf = ({ single, digest }: ReturnType<typeof tellingsDue<ReminderFact>>): string[] => [
  ...single.map(({ key }) => key),
  ...(digest ? [digest.key, ...digest.tellings.map(({ key }) => key)] : []),
];

/** A link for each kind that a letter names; the book keeps hashes alone. */
function newLinks(context: Context, publicUrl: string) {
  const made: { tokenHash: string; kind: string }[] = [];
  const stopUrlOf = (kind: string): string => {
    const token = Buffer.from(context.randomBytes(32)).toString('base64url');
    made.push({ tokenHash: hashToken(token), kind });
    return `${publicUrl}/stop/${context.actor.storehouseId}/${token}`;
  };
  return { made, stopUrlOf };
}

function frameOf(
  { storehouseId }: Actor,
  wishes: Pick<TellingWishRow, 'language' | 'timeZone'>,
  at: { place: Place; publicUrl: string; stopUrlOf: LetterFrame['stopUrlOf'] },
): LetterFrame {
  return {
    ...{ language: wishes.language, readerZone: wishes.timeZone, stopUrlOf: at.stopUrlOf },
    ...{ storehouseName: at.place.name, storehouseZone: at.place.timeZone },
    home: `${at.publicUrl}/s/${storehouseId}`,
  };
}

async function send(tx: Tx, { storehouseId, personId }: Actor, letter: LetterText): Promise<void> {
  await writeLetter(tx, storehouseId, { personId, ...letter });
}
