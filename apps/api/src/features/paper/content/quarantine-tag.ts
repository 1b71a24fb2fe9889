import { presentHold } from '../../hold/present.ts';
import { readHold } from '../../hold/use-cases.ts';
import { presentDoubt } from '../../seam/present.ts';
import { readDoubt } from '../../seam/use-cases.ts';
import { type Block, facts, heading, type PaperContent, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, saidOn, subject } from './making.ts';
import { resultOf } from './seam-log.ts';

/** Tied to what is on hold: what it is, since when and why, what must not be done, and who lets it go. */
export async function makeHoldTag({ context, formats }: Desk, holdId: string): Promise<MadePaper> {
  const hold = presentHold(context.actor, await readHold(context, holdId));
  const { tag } = formats.words;
  const isBag = hold.scope === 'bag';
  const about = namesOf(hold, formats);
  return madeOf(
    { subjectId: holdId, buyId: hold.buyId },
    {
      about,
      blocks: tagBlocks(formats, {
        isEnded: hold.endedAt !== null,
        facts: [
          { name: tag.what, value: about.join(', ') },
          { name: tag.since, value: formats.instantWithZone(new Date(hold.heldAt)) },
          { name: tag.why, value: saidOn(hold.reason, formats) },
          ...(isBag ? [] : [{ name: tag.codeOfThis, value: '' }]),
        ],
        reaches: isBag ? undefined : tag.reaches,
        caution: isBag ? tag.bagCaution : tag.anyCaution,
        release: tag.byTwo,
        boxes: [tag.lead, tag.coordinator],
      }),
    },
  );
}

/** What a hold is on, as far as everybody may know it: the tag hangs where anyone walks by, so it counts nobody's containers. */
export function namesOf(hold: ReturnType<typeof presentHold>, formats: Formats): string[] {
  const { tag } = formats.words;
  const { bagNo, bagCode, mark, supplier, deliveredOn, session, line, fromSerial, toSerial, fromOn, toOn } =
    hold;
  const food = hold.food && (formats.language === 'es' ? hold.food.nameEs : hold.food.name);
  const names = {
    bag: [bagNo !== null && tag.bag(bagNo), bagCode],
    lot: [mark ? tag.lot(mark) : tag.lotUnmarked, food, supplier?.name],
    containers: [tag.chosen],
    session: [
      session && tag.session(session.name),
      line !== null && formats.words.seam.line(line),
      fromSerial !== null && toSerial !== null && tag.serials(fromSerial, toSerial),
    ],
    delivery: [supplier && tag.delivery(supplier.name), deliveredOn && formats.day(deliveredOn)],
    mark: [mark && tag.mark(mark), supplier?.name],
    place: [hold.place?.name],
    food: [food, fromOn && toOn && tag.cameOn(formats.day(fromOn), formats.day(toOn))],
  }[hold.scope];
  return (names ?? []).filter((name) => typeof name === 'string');
}

/** Laid on what a failed check put in doubt: each container still held, by serial and code, and no household. */
export async function makeDoubtTag({ context, formats }: Desk, checkId: string): Promise<MadePaper> {
  const { check, machine, kind, session, held, checkedByName } = presentDoubt(
    await readDoubt(context, checkId),
  );
  const { tag, seam } = formats.words;
  const open = held.filter(({ disposition }) => disposition === null);
  const [first] = held;
  const last = held.at(-1);
  return madeOf(
    { subjectId: checkId },
    {
      about: [session.name, tag.count(open.length)],
      blocks: tagBlocks(formats, {
        isEnded: open.length === 0,
        facts: [
          { name: tag.what, value: `${nameOf(kind, formats)}: ${tag.count(open.length)}` },
          ...(first && last
            ? [{ name: seam.suspect, value: seam.window(check.line, first.serial, last.serial, held.length) }]
            : []),
          { name: seam.machine, value: machine },
          { name: tag.since, value: formats.instantWithZone(new Date(check.checkedAt)) },
          { name: tag.why, value: resultOf(check, formats).join(', ') },
          { name: tag.foundBy, value: checkedByName },
        ],
        codes: open.map(({ serial, spelled }) => `${serial}: ${spelled}`),
        caution: tag.canCaution,
        release: tag.byPassing,
        boxes: [tag.lead],
      }),
    },
  );
}

const madeOf = (of: { subjectId: string; buyId?: string | null }, content: PaperContent): MadePaper => ({
  subject: subject('quarantine-tag', of),
  contentWith: () => content,
});

type Tag = {
  readonly isEnded: boolean;
  readonly facts: readonly { readonly name: string; readonly value: string }[];
  readonly codes?: readonly string[];
  readonly reaches?: string | undefined;
  readonly caution: string;
  readonly release: string;
  readonly boxes: readonly string[];
};

function tagBlocks(formats: Formats, of: Tag): Block[] {
  const { tag } = formats.words;
  const { codes = [] } = of;
  return [
    { kind: 'lead', before: '', strong: of.isEnded ? tag.ended : tag.onHold, after: '' },
    ...(of.isEnded ? [] : [text(tag.doNot)]),
    facts([...of.facts]),
    ...(of.reaches && !of.isEnded ? [text(of.reaches)] : []),
    ...(codes.length === 0 ? [] : [heading(tag.codes), text(codes.join('   '))]),
    heading(tag.caution),
    text(of.caution),
    heading(tag.letGo),
    text(of.release),
    facts([
      { name: tag.found, value: '' },
      { name: tag.stands, value: '' },
    ]),
    { kind: 'signatures', boxes: of.boxes },
  ];
}
