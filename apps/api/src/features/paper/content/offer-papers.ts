import { spellCode, sumOf } from '@sheafbook/units';
import { fieldProblem, Problem } from '../../../platform/problem.ts';
import { presentOffer } from '../../offer/present.ts';
import { readOffer } from '../../offer/use-cases.ts';
import { type Block, facts, heading, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, saysAllergens, subject, treatmentName } from './making.ts';

type Offer = ReturnType<typeof presentOffer>;
type Part = Offer['containers'][number];

/** What is offered and until when, for whoever has no screen; whose it is stands only where it is common stock. */
export async function makeOfferNotice({ context, formats }: Desk, offerId: string): Promise<MadePaper> {
  const offer = presentOffer(await readOffer(context, offerId));
  const { offer: words } = formats.words;
  const left = offer.containers.filter(({ state }) => state === 'offered');
  if (left.length === 0 || offer.standing === 'over') throw new Problem('offer-over');
  const content = {
    about: [nameOf(offer.food, formats), offer.isOfStore ? formats.words.commonStock : words.ofMember],
    blocks: [
      {
        kind: 'lead',
        before: offer.standing === 'your-turn' ? words.yourTurn : words.until,
        strong: formats.instantWithZone(new Date(offer.untilAt)),
        after: '',
      } as const,
      facts([
        // The turns may take all the time there is: then it is never everybody’s.
        offer.openAt < offer.closesAt && {
          name: words.open,
          value: formats.instantWithZone(new Date(offer.openAt)),
        },
        { name: words.closes, value: formats.instantWithZone(new Date(offer.closesAt)) },
        { name: words.allergens, value: saysAllergens(offer.food, formats) },
        offer.note !== '' && { name: words.note, value: offer.note },
      ]),
      partsTable(left, formats),
      text(formats.words.currencyOnce(formats.currency)),
      text(words.order),
      text(offer.goesToPantry ? words.toPantry : words.stays),
      heading(words.wanted),
      facts([words.codes, words.household, words.writtenAt].map((name) => ({ name, value: '' }))),
      { kind: 'signatures', boxes: [words.signTaker] } as const,
    ],
  };
  return { subject: subject('offer-notice', { subjectId: offerId }), contentWith: () => content };
}

/** What changed hands at one taking: for giver and taker alone, who learn of each other by it. */
export async function makeTransferSlip(
  { context, formats }: Desk,
  wish: { offerId: string; entryId: string | undefined },
): Promise<MadePaper> {
  const offer = presentOffer(await readOffer(context, wish.offerId));
  const taken = chooseTaking(offer, wish.entryId);
  const { offer: words } = formats.words;
  const [first] = taken;
  const giver = offer.isOfStore ? formats.words.commonStock : (offer.giver ?? '');
  const price = sumOf(taken.map(({ priceMinorUnits }) => priceMinorUnits));
  const money = `${formats.money(price)} ${formats.currency}`;
  const content = {
    about: [nameOf(offer.food, formats), first.takenBy ?? ''],
    blocks: [
      facts([
        { name: words.from, value: giver },
        { name: words.to, value: first.takenBy ?? '' },
        { name: words.takenAt, value: formats.instantWithZone(new Date(first.takenAt ?? '')) },
        { name: words.allergens, value: saysAllergens(offer.food, formats) },
        { name: words.fetchedAt, value: '' },
      ]),
      partsTable(taken, formats),
      text(price === 0 ? words.asGift : words.paid(money, giver, first.takenBy ?? '')),
      { kind: 'signatures', boxes: [words.signGiver, words.signTaker] } as const,
    ],
  };
  return {
    subject: subject('transfer-slip', { subjectId: wish.offerId, detail: first.takenInEntry ?? '' }),
    contentWith: () => content,
  };
}

/** The parts that were taken together: those of the entry named, or the only ones that the reader may see. */
function chooseTaking(offer: Offer, entryId: string | undefined): [Part, ...Part[]] {
  const taken = offer.containers.filter(({ takenInEntry }) => takenInEntry !== null);
  const entryIds = [...new Set(taken.map(({ takenInEntry }) => takenInEntry))];
  if (entryId === undefined && entryIds.length > 1)
    throw fieldProblem(
      'invalid-input',
      'entry',
      'Things of this offer were taken more than once: say which time.',
    );
  const wanted = entryId ?? entryIds[0];
  const [first, ...others] = taken.filter(({ takenInEntry }) => takenInEntry === wanted);
  if (!first) throw new Problem('thing-not-found', { thing: 'claim', detail: 'Nobody took this yet.' });
  return [first, ...others];
}

function partsTable(parts: readonly Part[], formats: Formats): Block {
  const { offer: words, total } = formats.words;
  return table(
    [
      { name: words.container, isKey: true },
      { name: words.packed },
      { name: words.mass, isNumber: true },
      { name: words.price, isNumber: true },
    ],
    [
      ...parts.map((part) => ({
        cells: [
          `${spellCode(part.code)}\n${nameOf(part.kind, formats)}`,
          `${formats.day(part.packedOn)}\n${treatmentName(part, formats)}`,
          formats.bothLines(part.grams),
          part.priceMinorUnits === 0 ? words.gift : formats.money(part.priceMinorUnits),
        ],
      })),
      {
        kind: 'sum',
        cells: [
          total,
          '',
          formats.bothLines(sumOf(parts.map(({ grams }) => grams))),
          formats.money(sumOf(parts.map(({ priceMinorUnits }) => priceMinorUnits))),
        ],
      },
    ],
  );
}
