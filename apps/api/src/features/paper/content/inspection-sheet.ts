import { FINDING_WORDS, type Finding, isForPeople, lookGroupsOf, type WhyDue } from '@sheafbook/keeping';
import { dayInZone, spellCode } from '@sheafbook/units';
import { householdOf } from '../../../platform/actor.ts';
import { todayOf } from '../../../platform/today.ts';
import { readInspectionRound } from '../../inspection/use-cases.ts';
import { type Block, heading, type Row, section, table, text } from '../content.ts';
import { type Formats, together } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Round = Awaited<ReturnType<typeof readInspectionRound>>;
type Looked = Round['due'][number]['row']['looked'];
/** A container with the sentences that say why it is to be looked at. */
type ToLook = { readonly looked: Looked; readonly whys: readonly string[] };

/** The inspection sheet: what is to be looked at by today and why, with each finding of the guided look to tick. */
export async function makeInspectionSheet(desk: Desk, of: 'household' | 'common'): Promise<MadePaper> {
  const { context, formats } = desk;
  const { inspection: words, shelfList } = formats.words;
  const round = await readInspectionRound(context, { of });
  const watched = watchedOf(round, formats, context.actor.timeZone);
  const due = round.due.map(({ row, why, dueOn }) => ({
    looked: row.looked,
    whys: [words.dueSince(words.whys[why satisfies WhyDue], formats.day(dueOn))],
  }));
  const count = watched.length + due.length;
  const content = {
    about: [of === 'household' ? shelfList.ours : shelfList.common],
    blocks: [
      {
        kind: 'lead',
        ...{
          before: '',
          strong: words.toLook(count),
          after: ` ${shelfList.asOf(formats.day(todayOf(context)))}`,
        },
      } as const,
      text(words.outsideFirst),
      ...(count === 0 ? [] : [text(words.howTo)]),
      ...(watched.length === 0
        ? []
        : [heading(words.onWatch), text(words.onWatchSays), roundTable(watched, round, formats)]),
      ...(watched.length > 0 && due.length === 0
        ? []
        : section(words.due, due, { block: roundTable(due, round, formats), nothing: words.nothing })),
      text(words.howOften),
      text(words.planningAid),
    ],
  };
  return {
    subject: subject('inspection-sheet', { householdId: of === 'household' ? householdOf(context) : null }),
    contentWith: () => content,
  };
}

/** One row for each container, however many things beside it were found. */
function watchedOf({ watches }: Round, formats: Formats, timeZone: string): ToLook[] {
  const { inspection: words } = formats.words;
  const byId = new Map<string, ToLook>();
  for (const { watch, ...looked } of watches) {
    const found = FINDING_WORDS[watch.finding as Finding].name[formats.language];
    const why = [
      words.because(found, formats.day(dayInZone(watch.since.getTime(), timeZone))),
      watch.isSameWindow ? words.sameWindow : '',
    ];
    const { containerId } = looked.container;
    const whys = [...(byId.get(containerId)?.whys ?? []), why.filter(Boolean).join(' ')];
    byId.set(containerId, { looked, whys });
  }
  return [...byId.values()];
}

function roundTable(rows: readonly ToLook[], round: Round, formats: Formats): Block {
  const { inspection: words } = formats.words;
  const outside = tickedOutside(formats);
  const opened = tickedOpened(formats);
  return table(
    [{ name: words.container }, { name: words.outside }, { name: words.opened }],
    rows.map((row): Row => ({ kind: 'pen', cells: [whichOf(row, round, formats), outside, opened] })),
  );
}

function whichOf({ looked, whys }: ToLook, { keptById }: Round, formats: Formats): string {
  const { container, kind, food } = looked;
  const { inspection: words, shelfList } = formats.words;
  const kept = keptById.get(container.containerId);
  const isUnfit = kept !== undefined && kept.look !== null && !isForPeople(kept.look.outcome);
  const lines = [
    spellCode(container.containerCode),
    nameOf(food, formats),
    [
      nameOf(kind, formats),
      shelfList.packed(formats.day(container.packedOn)),
      container.openedOn === null ? '' : shelfList.opened,
    ]
      .filter(Boolean)
      .join(', '),
    words.stands(kept?.place?.name ?? shelfList.nowhere),
    ...whys,
    kept?.isHeld ? shelfList.held : '',
    isUnfit ? shelfList.unfit : '',
    words.lookedBy,
    words.lookedOn,
  ];
  return lines.filter(Boolean).join('\n');
}

/** Two questions of the guided look to a line, so that this column is no taller than those beside it. */
function tickedOutside(formats: Formats): string {
  const questions = [['nothing-wrong' as const], ...lookGroupsOf('outside').map(({ findings }) => findings)];
  const pairs = questions.flatMap((first, at) =>
    at % 2 === 0 ? [[...first, ...(questions[at + 1] ?? [])]] : [],
  );
  return pairs.map((pair) => boxes(pair, formats)).join('\n');
}

/** What shows only in the food; smell and taste come after everything else, as in the guided look. */
function tickedOpened(formats: Formats): string {
  const { inspection: words } = formats.words;
  const outside = new Set(lookGroupsOf('outside').map(({ code }) => code));
  const groups = lookGroupsOf('opened').filter(({ code }) => !outside.has(code));
  return [
    boxes(['nothing-wrong'], formats),
    ...groups.flatMap(({ code, findings }) => [`${words.groups[code]}:`, boxes(findings, formats)]),
    words.kernels,
  ].join('\n');
}

const GAP = '\u00a0 ';

/** Names up to this length fit a column of the large version in one line. */
const SHORT_NAME = 16;

/** A box stays with the first word of what it says, or with all of it. */
const boxes = (findings: readonly Finding[], { words, language }: Formats): string =>
  findings
    .map((finding) => {
      const name = FINDING_WORDS[finding].name[language];
      return together(`${words.inspection.tick} `) + (name.length > SHORT_NAME ? name : together(name));
    })
    .join(GAP);
