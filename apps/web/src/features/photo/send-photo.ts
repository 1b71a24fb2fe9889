import { api, ask } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { toBase64 } from './shrink.ts';
import { dropWaiting, type Shown, type WaitingPhoto } from './waiting.ts';

const inside = api.storehouses[':storehouse'];

/** Sends a photo that waits under the key that makes it count once; it leaves the browser when the server has it. */
export async function sendPhoto(photo: WaitingPhoto): Promise<void> {
  const { id, jpeg } = photo;
  await post(photo, await toBase64(jpeg), { headers: { 'Idempotency-Key': id } }).catch((error: unknown) => {
    // The very same picture of the very same thing is there already: nothing is lost by letting this one go.
    if (!(error instanceof ApiProblem && error.code === 'already-there')) throw error;
  });
  await dropWaiting(id);
}

function post(of: Shown, contentBase64: string, options: { headers: Record<string, string> }) {
  const { storehouse, thingId } = of;
  if ('buy' in of) {
    const json = { shows: of.shows, thingId, contentBase64, note: '' };
    return ask(inside.buys[':buy'].photos.$post({ param: { storehouse, buy: of.buy }, json }, options));
  }
  const param = { storehouse, item: of.item };
  const json = { contentBase64, ...partOrLoan(of.shows, thingId) };
  return ask(inside.equipment[':item'].photos.$post({ param, json }, options));
}

function partOrLoan(shows: Shown['shows'], id: string) {
  if (shows === 'part') return { partId: id };
  if (shows === 'equipment') return {};
  return { loan: { loanId: id, moment: shows === 'loan-out' ? ('out' as const) : ('back' as const) } };
}
