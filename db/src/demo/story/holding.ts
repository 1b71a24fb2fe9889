import type { StoryBuy } from '../buy.ts';
import type { Cast } from '../cast.ts';
import { LENTILS } from '../grain.ts';
import { listPieces } from './keeping.ts';

type Notices = { notices: { id: string; kind: string; path: string | null }[] };

/** Ida has no telephone that she can hold, and reads no notices. */
const NOT_REACHED = 'Ince';

/** The lentils' supplier calls: the lot is put on hold, and all who have some say that they know, but for one. */
export async function holdLentils(cast: Cast, buy: StoryBuy): Promise<void> {
  const { teller, coordinator, neighbours, of } = cast;
  teller.goTo('2026-11-19');
  const [piece] = await listPieces(of(NOT_REACHED), buy, LENTILS);
  if (!piece) throw new Error(`${NOT_REACHED} has no lentils to be told of`);
  const { id } = await coordinator.post<{ id: string }>('/holds', {
    of: { scope: 'lot', lotId: piece.lotId },
    reason: 'Thornford calls: another customer found a splinter of glass in lentils of the mark T-L1',
  });
  let know = 0;
  for (const { name, caller } of neighbours) {
    const { notices } = await caller.get<Notices>('/notices?limit=100');
    const told = notices.find(({ kind, path }) => kind === 'held' && path?.endsWith(`/holds/${id}`));
    if (!told || name === NOT_REACHED) continue;
    await caller.put(`/notices/${told.id}/reading`, { isAcknowledged: true });
    know += 1;
  }
  teller.say(
    `The lentils are on hold: ${know} households know, and ${NOT_REACHED} has not been reached yet.`,
  );
}
