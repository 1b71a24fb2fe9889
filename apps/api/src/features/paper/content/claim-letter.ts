import { presentClaim } from '../../claim/present.ts';
import { readClaim } from '../../claim/use-cases.ts';
import { presentLandingSheet } from '../../landing/present.ts';
import { readLandingSheet } from '../../landing/use-cases.ts';
import { presentOrders } from '../../order/present.ts';
import { readOrders } from '../../order/use-cases.ts';
import { type Block, facts, figures, heading, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Claim = ReturnType<typeof presentClaim>;
type Landing = ReturnType<typeof presentLandingSheet>;
type Order = ReturnType<typeof presentOrders>['orders'][number];

/** The letter that goes to a supplier with a claim: what was ordered, what was counted and weighed, and what we ask. */
export async function makeClaimLetter({ context, formats }: Desk, claimId: string): Promise<MadePaper> {
  const claim = presentClaim(await readClaim(context, claimId));
  const { buyId } = claim;
  const landing = presentLandingSheet(await readLandingSheet(context, buyId));
  const { orders } = presentOrders(await readOrders(context, buyId), context.actor);
  const order = orders.find(({ supplier }) => supplier.id === claim.supplierId);
  const { words, currency } = formats;
  const kind = words.claim.kinds[claim.kind] ?? claim.kind;
  const content = {
    about: order ? [order.supplier.name, words.order.orderNo(order.orderNo)] : [],
    blocks: [
      {
        kind: 'lead',
        before: words.claim.lead,
        strong: formats.money(claim.minorUnits),
        after: `${currency}, ${kind}`,
      } as const,
      letterFacts({ claim, landing, order, formats }),
      ...countedBlocks(landing, { claim, formats }),
      ...bagBlocks(landing, { claim, formats }),
      heading(words.claim.because),
      text(claim.because),
      heading(words.claim.ask),
      text(words.claim.askWords(`${formats.money(claim.minorUnits)} ${currency}`)),
      { kind: 'signatures', boxes: [words.claim.forStorehouse] } as const,
    ],
  };
  return { subject: subject('claim-letter', { buyId, subjectId: claimId }), contentWith: () => content };
}

function letterFacts(at: {
  claim: Claim;
  landing: Landing;
  order: Order | undefined;
  formats: Formats;
}): Block {
  const { claim, landing, order, formats } = at;
  const { words } = formats;
  const arrived = landing.deliveries
    .filter(({ supplierId }) => supplierId === claim.supplierId)
    .map(({ arrivedOn, carrier }) => words.claim.arrived(formats.day(arrivedOn), carrier));
  const contacts = (order?.contacts ?? []).map(({ name, phone }) =>
    [words.order.coordinator, name, phone].filter((part) => part !== '').join(', '),
  );
  const isSettled = claim.state !== 'open';
  return facts([
    {
      name: words.claim.to,
      value: [order?.supplier.name, order?.supplier.contact].filter(Boolean).join('\n'),
    },
    { name: words.claim.about, value: arrived.join('\n') || words.none },
    { name: words.order.date, value: order ? formats.day(order.orderedOn) : words.none },
    { name: words.claim.raisedOn, value: formats.day(claim.raisedOn) },
    { name: words.claim.contact, value: contacts.join('\n') || words.none },
    { name: words.claim.state, value: words.claim.states[claim.state] ?? claim.state },
    isSettled && { name: words.claim.credited, value: formats.money(claim.creditedMinorUnits) },
  ]);
}

type About = { claim: Claim; formats: Formats };

const sizesOf = (landing: Landing, { buyLineId }: Claim) =>
  landing.lines.filter((size) => buyLineId === null || size.buyLineId === buyLineId);

function countedBlocks(landing: Landing, { claim, formats }: About): Block[] {
  const { words } = formats;
  const sizes = sizesOf(landing, claim);
  if (sizes.length === 0) return [];
  return [
    heading(words.claim.counted),
    table(
      [
        { name: words.food },
        ...figures(words.bag, words.landing.ordered, words.landing.counted, words.landing.short),
      ],
      sizes.map((size) => ({
        cells: [
          size.food ? nameOf(size.food, formats) : '',
          `${size.bagLabel}\n${formats.grams(size.bagGrams)}`,
          formats.count(size.orderedBags),
          size.countedBags === null ? '' : formats.count(size.countedBags),
          size.shortBags === null ? '' : formats.count(size.shortBags),
        ],
      })),
    ),
  ];
}

/** The bags that came other than declared: damaged, light, refused or on hold. */
function bagBlocks(landing: Landing, { claim, formats }: About): Block[] {
  if (claim.kind === 'freight' || claim.kind === 'goodwill' || claim.kind === 'short') return [];
  const { words } = formats;
  const found = sizesOf(landing, claim).flatMap((size) =>
    size.bags
      .filter((bag) => bag.condition !== 'dry' || bag.decision !== 'accepted' || bag.isOnHold)
      .map((bag) => ({ size, bag })),
  );
  if (found.length === 0) return [];
  return [
    heading(words.claim.bagsFound),
    table(
      [
        { name: words.landing.bagNo, isNumber: true },
        { name: words.landing.mark },
        ...figures(words.landing.declared, words.landing.net, words.claim.lost),
        { name: words.landing.condition },
      ],
      found.map(({ bag }) => ({
        cells: [
          String(bag.bagNo),
          bag.supplierMark,
          formats.bothLines(bag.declaredGrams),
          formats.bothLines(bag.netGrams),
          formats.bothLines(Math.max(0, bag.declaredGrams - bag.netGrams)),
          [
            words.landing.conditions[bag.condition] ?? bag.condition,
            words.landing.decisions[bag.decision] ?? bag.decision,
            bag.note,
          ]
            .filter((part) => part !== '')
            .join('\n'),
        ],
      })),
    ),
  ];
}
