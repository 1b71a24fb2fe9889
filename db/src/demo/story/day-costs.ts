import { money } from '../buy.ts';
import { type Cast, idIn } from '../cast.ts';

type Settlement = { proposal: { supply: { id: string; name: string }; usedPieces: number }[] };
type Shown = { seen: string; totalMinorUnits: number; storehouseMinorUnits: number };

/** Invented prices: what the store bought for the evening, by the sleeve, the bag and the roll. */
const BOUGHT = [
  { name: 'No. 10 cans with lids', kind: 'container', packPieces: 12, packMinorUnits: 1_596, packs: 2 },
  { name: 'Absorbers, 300 ml', kind: 'absorber', packPieces: 25, packMinorUnits: 425, packs: 1 },
  { name: 'Labels', kind: 'label', packPieces: 100, packMinorUnits: 650, packs: 1 },
] as const;
/** Three trials after the roll was set anew, and the can that is torn down first: what the seamer took is the store's. */
const TAKEN_BY_SEAMER = 4;

/** The treasurer pays for what the evening will use up, and it stands in the book to the piece. */
export async function buySupplies({ treasurer, packingLead, kindIds, teller }: Cast): Promise<void> {
  const lines = [];
  for (const { packs, ...supply } of BOUGHT) {
    const { id } = await packingLead.post<{ id: string }>('/supplies', {
      ...supply,
      containerKindId: supply.kind === 'container' ? idIn(kindIds, 'can-no-10') : null,
      sizeMillilitres: supply.kind === 'absorber' ? 300 : null,
    });
    lines.push({
      ...{ supplyId: id, pieces: packs * supply.packPieces },
      minorUnits: packs * supply.packMinorUnits,
    });
  }
  const paidBy = { who: 'till', till: 'bank' };
  await treasurer.post('/supply-purchases', { paidBy, lines, currency: 'USD', note: 'for the canning' });
  const paid = lines.reduce((sum, { minorUnits }) => sum + minorUnits, 0);
  teller.say(`Cans, absorbers and labels are bought for ${money(paid)}.`);
}

/** What the log says was used, what the seamer spoilt, and the tea; shown first, then posted as it was shown. */
export async function shareCosts({ packingLead, of, teller }: Cast, day: string): Promise<void> {
  const { proposal } = await packingLead.get<Settlement>(`${day}/settlement`);
  const wish = {
    supplies: proposal.map(({ supply, usedPieces }) => ({
      ...{ supplyId: supply.id, usedPieces, spoiltPieces: 0 },
      spoiltByMachinePieces: supply.name.startsWith('No. 10') ? TAKEN_BY_SEAMER : 0,
    })),
    sundries: [
      {
        ...{ what: 'tea and bread for the helpers', minorUnits: 1_140 },
        paidBy: { who: 'household', householdId: of('Corran').householdId },
      },
    ],
    note: '',
  };
  const shown = await packingLead.post<Shown>(`${day}/settlement-previews`, wish);
  await packingLead.post(`${day}/settlement`, { ...wish, seen: shown.seen });
  teller.say(
    `The evening cost ${money(shown.totalMinorUnits)}; the store bears ${money(shown.storehouseMinorUnits)} of it.`,
  );
}
