import { eatFirstYears } from '@sheafbook/keeping';
import { compareText, roughSpan, spellCode, sumOf } from '@sheafbook/units';
import { householdOf } from '../../../platform/actor.ts';
import { todayOf } from '../../../platform/today.ts';
import { type RotationItem, readRotation, readStoreRotation } from '../../rotation/use-cases.ts';
import { type Block, heading, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type WhoseShelf = 'household' | 'common';

const AS_IT_IS = { repack: false, give: false };
const MOST_EATEN_FIRST = 40;

/** Every container by the place that it stands in, with a column for the count. */
export async function makeShelfList(desk: Desk, of: WhoseShelf): Promise<MadePaper> {
  const { context, formats } = desk;
  const { shelfList: words } = formats.words;
  const todayOn = todayOf(context);
  const all = (await readShelf(desk, of)).items.filter(({ container }) => container !== null);
  const places = [...new Map(all.map(({ place }) => [place?.placeId ?? '', place])).values()].toSorted(
    (a, b) => Number(a === null) - Number(b === null) || (a?.name ?? '').localeCompare(b?.name ?? ''),
  );
  const blocks: Block[] = places.flatMap((place) => {
    const here = all
      .filter((item) => item.place?.placeId === place?.placeId)
      .toSorted((a, b) => compareText(orderOf(a), orderOf(b)));
    return [heading(place?.name ?? words.nowhere), countTable(here, formats, todayOn)];
  });
  const grams = sumOf(all.map((item) => item.grams));
  const content = {
    about: [of === 'household' ? words.ours : words.common],
    blocks: [
      ...leadOf(words.stands(all.length), formats.both(grams), words.asOf(formats.day(todayOn))),
      ...(all.length === 0 ? [text(words.nothing)] : [text(words.estimate)]),
      ...blocks,
      { kind: 'signatures', boxes: words.sign } as const,
    ],
  };
  return { subject: subjectOf(desk, 'shelf-list', of), contentWith: () => content };
}

const orderOf = ({ food, lotId, code }: RotationItem) => `${food.foodCode} ${lotId} ${code}`;
const leadOf = (before: string, strong: string, after: string): Block[] => [
  { kind: 'lead', before, strong, after: ` ${after}` },
];

function countTable(here: readonly RotationItem[], formats: Formats, todayOn: string): Block {
  const { shelfList: words } = formats.words;
  const rows = here.map(
    (item): Row => ({
      kind: 'pen',
      cells: [
        spellCode(item.code),
        whatOf(item, formats),
        formats.bothLines(item.grams),
        yearsOf(item, formats, todayOn),
        '',
      ],
    }),
  );
  return table(
    [
      { name: words.code, isKey: true },
      { name: words.what },
      { name: words.net, isNumber: true },
      { name: words.eatFirst },
      { name: words.counted, penWidth: 70 },
    ],
    rows,
  );
}

function whatOf(item: RotationItem, formats: Formats): string {
  const { food, kind, packedOn, isOpen, isOnHold, isUnfit } = item;
  const { shelfList: words } = formats.words;
  const lines = [
    nameOf(food, formats),
    [kind && nameOf(kind, formats), words.packed(formats.day(packedOn)), isOpen ? words.opened : '']
      .filter(Boolean)
      .join(', '),
    isOnHold ? words.held : '',
    isUnfit ? words.unfit : '',
  ];
  return lines.filter(Boolean).join('\n');
}

/** The year, and the years that it may be: no finer than it is known. */
function yearsOf({ life }: RotationItem, formats: Formats, todayOn: string): string {
  const { shelfList: words } = formats.words;
  if (life === null) return words.untold;
  const { soonest, likely, latest } = eatFirstYears(todayOn, life);
  const year = words.about(likely);
  return soonest === latest ? year : `${year}\n${words.between(soonest, latest)}`;
}

/** What is opened next, in order: a household's by its own rotation, common stock's by what ends first. */
export async function makeEatFirstList(desk: Desk, of: WhoseShelf): Promise<MadePaper> {
  const { formats } = desk;
  const { shelfList, eatFirst: words } = formats.words;
  const { items, queue } = await readShelf(desk, of);
  const first = queue.filter(({ container }) => container !== null);
  const shown = first.slice(0, MOST_EATEN_FIRST);
  const unfit = items.filter(({ container, isUnfit }) => container !== null && isUnfit);
  const content = {
    about: [of === 'household' ? shelfList.ours : shelfList.common],
    blocks: [
      text(of === 'household' ? words.lead : words.leadCommon),
      ...(shown.length === 0 ? [text(shelfList.nothing)] : [orderTable(shown, formats)]),
      ...(first.length > shown.length ? [text(words.more(first.length - shown.length))] : []),
      ...(unfit.length > 0 ? [text(words.leftOut(unfit.map(({ code }) => spellCode(code))))] : []),
      text(shelfList.estimate),
    ],
  };
  return { subject: subjectOf(desk, 'eat-first-list', of), contentWith: () => content };
}

function orderTable(shown: readonly RotationItem[], formats: Formats): Block {
  const { shelfList, eatFirst: words } = formats.words;
  return table(
    [
      { name: words.order, isNumber: true },
      { name: shelfList.code, isKey: true },
      { name: shelfList.what },
      { name: words.place },
      { name: shelfList.net, isNumber: true },
      { name: words.left },
      { name: words.done, penWidth: 50 },
    ],
    shown.map(
      (item, at): Row => ({
        kind: 'pen',
        cells: [
          formats.count(at + 1),
          spellCode(item.code),
          whatOf(item, formats),
          item.place?.name ?? shelfList.nowhere,
          formats.bothLines(item.grams),
          leftOf(item, formats),
          '',
        ],
      }),
    ),
  );
}

/** As roughly as every screen says it. */
function leftOf({ life }: RotationItem, { words: { shelfList, eatFirst: words } }: Formats): string {
  if (life === null) return shelfList.untold;
  const { count, unit } = roughSpan(life.likelyDays > 0 ? life.likelyDays : life.pastDays);
  const span = words.spans[unit](count);
  if (life.likelyDays > 0) return span;
  return life.pastDays === 0 ? words.atDay : words.past(span);
}

async function readShelf(
  { context }: Desk,
  of: WhoseShelf,
): Promise<{ items: readonly RotationItem[]; queue: readonly RotationItem[] }> {
  if (of === 'household') {
    const { items, rotation } = await readRotation(context, AS_IT_IS);
    return { items, queue: rotation.queue };
  }
  const { items } = await readStoreRotation(context, AS_IT_IS);
  const free = items.filter(({ isOnHold, isUnfit }) => !isOnHold && !isUnfit);
  return { items, queue: free.toSorted((a, b) => endOf(a) - endOf(b) || compareText(a.code, b.code)) };
}

const NEVER_DAYS = 999_999;
const endOf = ({ life }: RotationItem): number => life?.likelyDays ?? NEVER_DAYS;

const subjectOf = ({ context }: Desk, kind: 'shelf-list' | 'eat-first-list', of: WhoseShelf) =>
  subject(kind, { householdId: of === 'household' ? householdOf(context) : null });
