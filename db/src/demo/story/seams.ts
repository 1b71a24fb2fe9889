import { type Cast, idIn } from '../cast.ts';

type Checked = { holds: { containerId: string; serial: number }[] };
type Wish = Readonly<Record<string, unknown>>;

// Invented: no maker's sheet says this.
const LIMITS = {
  ...{ widthLeast: 110, widthMost: 120, thicknessLeast: 55, thicknessMost: 62 },
  ...{ countersinkLeast: 120, countersinkMost: 130, overlapPercent: 55, lidPlate: 10, bodyPlate: 9 },
  source: 'An invented maker’s sheet of the demo',
};
const GOOD = {
  ...{ widthMils: 115, thicknessMils: 58, countersinkMils: 125, coverHookMils: 75, bodyHookMils: 78 },
};
const THICK = { ...GOOD, thicknessMils: 66 };

/** The seamer of the hall, with its maker's limits; gives how one of its seams is torn down and written down. */
export async function bringSeamer({ packingLead, kindIds }: Cast, day: string) {
  const containerKindId = idIn(kindIds, 'can-no-10');
  const machine = await packingLead.post<{ id: string }>('/seal-machines', {
    ...{ name: 'Hall seamer', kind: 'can-seamer' },
  });
  await packingLead.put(`/seam-limits/${containerKindId}`, LIMITS);
  const sessionId = day.split('/').at(-1);
  return (wish: Wish) =>
    packingLead.post<Checked>('/seal-checks', {
      ...{ machineId: machine.id, sessionId, line: 1, containerKindId, how: 'teardown', looksGood: true },
      ...{ measures: GOOD, serial: null, gauge: 'G-2', ...wish },
    });
}
export type TearDown = Awaited<ReturnType<typeof bringSeamer>>;

/**
 * The seam of number 9 is too thick: 4 to 9 are in doubt. Halving finds that 7 was bad already; after three good trials what
 * passed is let go, the rest goes into new cans, and whose they are says that they have understood.
 */
export async function findBadSeam({ packingLead, of, teller }: Cast, tearDown: TearDown): Promise<void> {
  const { holds } = await tearDown({ serial: 9, measures: THICK, note: 'The second roll had worked loose.' });
  await tearDown({ serial: 6, occasion: 'suspect' });
  await tearDown({ serial: 7, occasion: 'suspect', measures: THICK });
  for (let trial = 1; trial <= 3; trial += 1)
    await tearDown({ occasion: 'clearing', note: `Trial ${trial} with the roll set anew.` });
  const idsThat = (passed: boolean) =>
    holds.filter(({ serial }) => serial < 6 === passed).map(({ containerId }) => containerId);
  await packingLead.post('/seal-holds/settling', {
    ...{
      containerIds: idsThat(true),
      disposition: 'release',
      note: 'Number 6 is good, and so are those before it.',
    },
  });
  await packingLead.post('/seal-holds/settling', {
    ...{
      containerIds: idsThat(false),
      disposition: 're-can',
      note: 'The seam is too thick from number 7 on.',
    },
  });
  const { caller } = of('Jessop');
  const { notices } = await caller.get<{ notices: { id: string; isSafety: boolean }[] }>('/notices');
  for (const { id, isSafety } of notices)
    if (isSafety) await caller.put(`/notices/${id}/reading`, { isAcknowledged: true });
  teller.say(
    `A seam fails: ${holds.length} cans are held, and each is answered for before anyone takes it home.`,
  );
}
