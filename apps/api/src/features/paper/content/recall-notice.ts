import { spellCode, sumOf } from '@sheafbook/units';
import { presentHold } from '../../hold/present.ts';
import { type NoticeFor, readHouseholdNotice, readPantryNotice } from '../../hold/use-cases.ts';
import { type Block, facts, heading, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { callable, type Desk, type MadePaper, nameOf, saidOn, subject } from './making.ts';
import { namesOf } from './quarantine-tag.ts';

/**
 * A recall notice: for a household with its own codes only, for a pantry with what went there by which manifest. What is on
 * hold and why, what to do, and a slip to tick, sign and give back.
 */
export async function makeRecallNotice(desk: Desk, wish: NoticeFor & { holdId: string }): Promise<MadePaper> {
  return wish.pantryId === undefined
    ? forHousehold(desk, wish)
    : forPantry(desk, { holdId: wish.holdId, pantryId: wish.pantryId });
}

async function forHousehold(
  { context, formats }: Desk,
  { holdId, householdId }: NoticeFor & { holdId: string },
): Promise<MadePaper> {
  const { seen, household, parts, coordinators } = await readHouseholdNotice(context, holdId, householdId);
  const { recall: words } = formats.words;
  return {
    subject: subject('recall-notice', { subjectId: holdId, householdId: household.householdId }),
    contentWith: (code) => ({
      about: [words.for(household.name)],
      blocks: [
        ...whatIsHeld({ context, formats }, { seen, coordinators }),
        heading(words.yours),
        ...(parts.length === 0
          ? [text(words.nothingNamed)]
          : [partsTable(parts, formats), text(words.others)]),
        ...whatToDo(words.steps, formats),
        slipOf(formats, {
          ...{ name: household.name, code, answers: words.answers },
          boxes: [words.sign, words.takenBy],
        }),
      ],
    }),
  };
}

async function forPantry(
  { context, formats }: Desk,
  { holdId, pantryId }: { holdId: string; pantryId: string },
): Promise<MadePaper> {
  const { seen, pantry, parts, coordinators } = await readPantryNotice(context, holdId, pantryId);
  const { recall: words } = formats.words;
  return {
    subject: subject('recall-notice', { subjectId: holdId, detail: pantryId }),
    contentWith: (code) => ({
      about: [words.for(pantry.name), [pantry.contactDuty, pantry.contact].filter(Boolean).join(': ')],
      blocks: [
        ...whatIsHeld({ context, formats }, { seen, coordinators }),
        heading(words.given),
        givenTable(parts, formats),
        text(words.others),
        ...whatToDo(words.pantrySteps, formats),
        slipOf(formats, {
          ...{ name: pantry.name, code, answers: words.pantryAnswers },
          boxes: [words.signPantry, words.takenBy],
        }),
      ],
    }),
  };
}

type Read = Awaited<ReturnType<typeof readHouseholdNotice>>;

function whatIsHeld(
  { context, formats }: Desk,
  { seen, coordinators }: Pick<Read, 'seen' | 'coordinators'>,
): Block[] {
  const hold = presentHold(context.actor, seen);
  const { recall: words } = formats.words;
  return [
    { kind: 'lead', before: '', strong: words.onHold, after: '' },
    text(words.onHoldSays),
    facts([
      { name: words.what, value: namesOf(hold, formats).join(', ') },
      { name: words.since, value: formats.instantWithZone(new Date(hold.heldAt)) },
      { name: words.why, value: saidOn(hold.reason, formats) },
      { name: words.call, value: callable(coordinators, formats) || words.callNobody },
    ]),
  ];
}

const whatToDo = (steps: readonly string[], { words: { recall } }: Formats): Block[] => [
  heading(recall.todo),
  ...steps.map((step, at) => text(`${at + 1}. ${step}`)),
  text(recall.next),
  heading(recall.caution),
  text(recall.cautionSays),
];

function partsTable(parts: Read['parts'], formats: Formats): Block {
  const { recall: words, total } = formats.words;
  const sum: Row = {
    kind: 'sum',
    cells: [total, '', formats.bothLines(sumOf(parts.map(({ grams }) => grams)))],
  };
  return table(
    [{ name: words.code, isKey: true }, { name: words.food }, { name: words.left, isNumber: true }],
    [
      ...parts.map((part) => ({
        cells: [
          spellCode(part.code),
          `${nameOf({ nameEn: part.foodEn, nameEs: part.foodEs }, formats)}\n${kindOf(part, formats)}`,
          part.grams === 0 ? words.none : formats.bothLines(part.grams),
        ],
      })),
      sum,
    ],
  );
}

function givenTable(parts: Awaited<ReturnType<typeof readPantryNotice>>['parts'], formats: Formats): Block {
  const { recall: words, total } = formats.words;
  return table(
    [
      { name: words.code, isKey: true },
      { name: words.food },
      { name: words.manifestHead },
      { name: words.mass, isNumber: true },
    ],
    [
      ...parts.map((part) => ({
        cells: [
          spellCode(part.code),
          `${nameOf({ nameEn: part.foodEn, nameEs: part.foodEs }, formats)}\n${kindOf(part, formats)}`,
          words.manifest(part.manifestNo, formats.day(part.onDay)),
          formats.bothLines(part.grams),
        ],
      })),
      {
        kind: 'sum' as const,
        cells: [total, '', '', formats.bothLines(sumOf(parts.map(({ grams }) => grams)))],
      },
    ],
  );
}

const kindOf = (
  { kindEn, kindEs }: { readonly kindEn: string | null; readonly kindEs: string | null },
  { language, words }: Formats,
): string => (language === 'es' ? kindEs : kindEn) ?? words.recall.bag;

/** What is cut off, ticked, signed and given back; its code leads to the hold. */
function slipOf(
  formats: Formats,
  of: { name: string; code: string; answers: readonly string[]; boxes: readonly string[] },
): Block {
  const { recall: words } = formats.words;
  return {
    kind: 'slip',
    title: words.slip,
    blocks: [
      text(words.slipOf(of.name, spellCode(of.code))),
      table(
        [{ name: words.mark }, { name: words.answer, isKey: true }, { name: words.which, penWidth: 230 }],
        of.answers.map((answer) => ({ kind: 'pen', cells: [words.tick, answer, ''] })),
      ),
      facts([words.day, words.telephone].map((name) => ({ name, value: '' }))),
      { kind: 'signatures', boxes: of.boxes },
    ],
  };
}
