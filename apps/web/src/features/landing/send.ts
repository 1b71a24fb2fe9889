import type { QueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { ApiProblem, isLastWord } from '../../api/problem.ts';
import type { Bag } from './landing-body.ts';
import { bagsQuery, deliveriesQuery, landingQuery, type OfBuy } from './queries.ts';
import { type Act, nextToSend, type Written } from './queue.ts';
import { noteReached, queueAt, tell } from './store.ts';

const inside = api.storehouses[':storehouse'];
const STALE = 'stale-version';

type Sending = { readonly place: string; readonly param: OfBuy; readonly queries: QueryClient };

const sendingNow = new Set<string>();

/** Sends what waits, oldest first, until nothing waits, a reading is refused, or the signal is gone. */
export async function drain(sending: Sending): Promise<void> {
  const { place, param, queries } = sending;
  if (sendingNow.has(place)) return;
  sendingNow.add(place);
  let count = 0;
  try {
    while (await sendNext(sending)) count += 1;
  } finally {
    sendingNow.delete(place); // before anything is read anew: a bag that is written meanwhile goes out at once
  }
  if (count > 0) await queries.invalidateQueries({ queryKey: ['buy', param] });
}

/** Whether something was sent, so that the next may follow. */
async function sendNext(sending: Sending): Promise<boolean> {
  const { place } = sending;
  const next = nextToSend(queueAt(place));
  if (!next) return false;
  try {
    const bookId = await send(sending, next);
    noteReached(place, true);
    tell(place, { type: 'sent', id: next.id, ...(bookId === undefined ? {} : { bookId }) });
    return true;
  } catch (error) {
    const isAnswer = error instanceof ApiProblem && isLastWord(error.status);
    noteReached(place, isAnswer);
    if (!isAnswer) return false;
    const words = [error.message, ...error.fields.map(({ message }) => message)];
    const refusal = { code: error.code, words: [...new Set(words)].join(' ') };
    tell(place, { type: 'refused', id: next.id, refusal });
    return false;
  }
}

/** Sends one act and lays its answer beside what was read, so that nothing is seen twice meanwhile. */
async function send({ param, queries }: Sending, { id, act }: Written): Promise<string | undefined> {
  const { storehouse } = param;
  const headers = { 'Idempotency-Key': id };
  if (act.kind === 'delivery') {
    const made = await ask(inside.buys[':buy'].deliveries.$post({ param, json: act.facts }, { headers }));
    await queries.refetchQueries(deliveriesQuery(param));
    await queries.refetchQueries(landingQuery(param));
    return made.id;
  }
  if (act.kind === 'counts') {
    await sendCounts(storehouse, act);
    await queries.refetchQueries(deliveriesQuery(param));
    await queries.refetchQueries(landingQuery(param));
    return undefined;
  }
  if (act.kind === 'weight') {
    keepBags(queries, param, [await weighAgain(param, act)]);
    return undefined;
  }
  const { bags } = await ask(
    inside.deliveries[':delivery'].bags.$post(
      { param: { storehouse, delivery: act.deliveryId }, json: { bags: [act.bag] } },
      { headers },
    ),
  );
  keepBags(queries, param, bags);
  return undefined;
}

/** A count says how many there are, whoever counted before, so it goes out with the version that stands. */
async function sendCounts(storehouse: string, { deliveryId, counts }: Extract<Act, { kind: 'counts' }>) {
  const param = { storehouse, delivery: deliveryId };
  for (let tries = 0; ; tries += 1) {
    const { version } = await ask(inside.deliveries[':delivery'].$get({ param }));
    try {
      return await ask(
        inside.deliveries[':delivery'].counts.$put({ param, json: { version, counts: [...counts] } }),
      );
    } catch (error) {
      const isStale = error instanceof ApiProblem && error.code === STALE;
      if (!isStale || tries > 2) throw error;
    }
  }
}

/** A weighing whose answer was lost on the way stands in the book already; that is no refusal. */
async function weighAgain({ storehouse, buy }: OfBuy, act: Extract<Act, { kind: 'weight' }>): Promise<Bag> {
  const param = { storehouse, bag: act.bagId };
  try {
    return await ask(inside.bags[':bag'].weight.$put({ param, json: { ...act.weight, buyId: buy } }));
  } catch (error) {
    if (!(error instanceof ApiProblem) || error.code !== STALE) throw error;
    const bag = await ask(inside.bags[':bag'].$get({ param }));
    const { grossGrams, tareGrams, version } = act.weight;
    if (bag.version !== version + 1 || bag.grossGrams !== grossGrams || bag.tareGrams !== tareGrams)
      throw error;
    return bag;
  }
}

function keepBags(queries: QueryClient, param: OfBuy, bags: readonly Bag[]): void {
  const ids = new Set(bags.map(({ id }) => id));
  queries.setQueryData(bagsQuery(param).queryKey, (known) =>
    known === undefined ? known : [...known.filter(({ id }) => !ids.has(id)), ...bags],
  );
}
