import type { Cast, Neighbour } from '../cast.ts';

type Part = { id: string; name: string; pieces: number };
type Item = { id: string; parts: Part[] };
type Thing = { id: string; version: number };

/** Invented prices, and a travelling thing's rules as the group wrote them. */
const SEALER = {
  ...{
    name: 'Can sealer',
    kindNote: 'for No. 10 cans, by hand crank',
    keptWhere: 'the shed behind the hall',
  },
  cautions: 'One operator, guard on, no loose sleeves or long hair near the chuck. Clamp it to a firm table.',
  ...{ valueMinorUnits: 64_000, depositMinorUnits: 2000, feeMinorUnits: 300, lateFeeMinorUnits: 200 },
  damageNote: 'Damage is charged at what the repair costs.',
  ...{ preMinutes: 0, postMinutes: 720, longestDays: 3, mayRelay: true },
  ...{ serviceEveryUses: 500, serviceEveryDays: 180, units: 1 },
};
const SEALER_PARTS = [
  { name: 'Chuck', pieces: 1, isCritical: true, valueMinorUnits: 3800 },
  { name: 'Seam gauge', pieces: 1, isCritical: false, valueMinorUnits: 2400 },
  { name: 'Hex key', pieces: 2, isCritical: false, valueMinorUnits: 150 },
];
const DOLLIES = {
  ...SEALER,
  ...{ name: 'Dolly', kindNote: 'for bags and pails', valueMinorUnits: 4500, depositMinorUnits: 0 },
  ...{
    cautions: '',
    feeMinorUnits: 0,
    postMinutes: 0,
    serviceEveryUses: null,
    serviceEveryDays: null,
    units: 2,
  },
};

const SCALE = {
  ...DOLLIES,
  ...{ name: 'Floor scale', kindNote: 'to 60 kg, in steps of 5 g', valueMinorUnits: 9500, units: 1 },
  ...{ cautions: 'Level and on a firm floor, away from draughts.', postMinutes: 60, isScale: true },
};

/** Who has the sealer one after the other; the last takes it straight from the one before. */
const TRAVELLERS = ['Hollis', 'Kemble', 'Marrick'] as const;

/** The keeper puts the sealer, two dollies and the scale, which is true, into lending; the sealer goes out, and comes back late to somebody's cost. */
export async function lendSealer(cast: Cast): Promise<{ sealer: Item; handedOn: Thing }> {
  const { teller, of } = cast;
  const keeper = of('Garrow').caller;
  teller.goTo('2026-11-18');
  const { id } = await keeper.post<Thing>('/equipment', SEALER);
  const sealer = await keeper.put<Item>(`/equipment/${id}/parts`, { parts: SEALER_PARTS });
  const dollies = await keeper.post<Thing>('/equipment', DOLLIES);
  await checkFloorScale(cast);
  const [first, second, third] = TRAVELLERS.map(of);
  if (!first || !second || !third) throw new Error('the sealer goes round three households');
  const book = (who: Neighbour, item: string, from: string, until: string, byRelay = false) =>
    who.caller.post<Thing>(`/equipment/${item}/bookings`, { from, until, byRelay });
  const early = await book(first, id, '2026-11-18T12:00', '2026-11-19T08:30');
  const next = await book(second, id, '2026-11-19T20:30', '2026-11-20T12:00');
  const asked = await book(third, id, '2026-11-20T12:00', '2026-11-22T12:00', true);
  await second.caller.post(`/bookings/${asked.id}/relay-answer`, { version: asked.version, agrees: true });
  await book(of('Fenner'), dollies.id, '2026-11-21T14:00', '2026-11-21T20:00');
  await keeper.post(`/bookings/${early.id}/loan`, {
    ...{ parts: ticksOf(sealer), takenBy: first.personName, depositFrom: 'cash' },
  });
  teller.goTo('2026-11-19'); // two and a half hours after it was due
  const [out] = (await first.caller.get<{ loans: Thing[] }>('/loans')).loans;
  await keeper.post(`/loans/${out?.id}/return`, {
    ...{ parts: ticksOf(sealer, 'Hex key'), broughtBy: first.personName, condition: 'ready', uses: 24 },
    ...{ note: 'one hex key is gone', refundTo: 'cash' },
  });
  teller.say(`The sealer came back from ${first.name} late and without a key; the deposit paid for both.`);
  return { sealer, handedOn: next };
}

/** The keeper lays ten kilograms on the new scale. Its maker lets it be off by ten grams; both figures are invented. */
async function checkFloorScale({ teller, of }: Cast): Promise<void> {
  const keeper = of('Garrow').caller;
  const { units } = await keeper.post<{ units: Thing[] }>('/equipment', SCALE);
  await keeper.post(`/equipment-units/${units[0]?.id}/scale-checks`, {
    ...{ laidGrams: 10_000, shownGrams: 10_005, limitGrams: 10 },
  });
  teller.say('The floor scale shows 10,005 g of 10,000: true within the 10 g that its maker lets it be off.');
}

/** The second household fetches the sealer, and hands it straight on to the third. */
export async function handSealerOn(
  cast: Cast,
  { sealer, handedOn }: { sealer: Item; handedOn: Thing },
): Promise<void> {
  const { teller, of } = cast;
  const [, second, third] = TRAVELLERS.map(of);
  if (!second || !third) throw new Error('the sealer goes round three households');
  teller.goTo('2026-11-20');
  const parts = ticksOf(sealer, 'Hex key');
  await second.caller.post(`/bookings/${handedOn.id}/loan`, { parts, takenBy: second.personName });
  const { bookings } = await third.caller.get<{ bookings: Thing[] }>('/bookings');
  await third.caller.post(`/bookings/${bookings[0]?.id}/relay`, {
    ...{ parts, takenBy: third.personName, broughtBy: second.personName, isCleaned: true, uses: 36 },
  });
  teller.say(`${second.name} hands the sealer straight on to ${third.name}.`);
}

/** All parts of a thing, one piece fewer of one that is named. */
const ticksOf = ({ parts }: Item, lost?: string) =>
  parts.map(({ id, name, pieces }) => ({ partId: id, pieces: name === lost ? pieces - 1 : pieces }));
