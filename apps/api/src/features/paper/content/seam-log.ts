import { presentSeamLog } from '../../seam/present.ts';
import { readSeamLog } from '../../seam/use-cases.ts';
import { type Block, facts, heading, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Log = ReturnType<typeof presentSeamLog>;
type Check = Log['checks'][number];
type Window = Log['windows'][number];

/** Rows for a pen: about as many checks as a line asks for in an afternoon. */
const PEN_ROWS = 6;
const CLEARS = ['first', 'second', 'third'] as const;

/** The seam log of a packing day (paper 8): what the maker allows, each check with its measures, and what a fault stopped. */
export async function makeSeamLog({ context, formats }: Desk, sessionId: string): Promise<MadePaper> {
  const log = presentSeamLog(await readSeamLog(context, sessionId));
  const { seam } = formats.words;
  const content = {
    about: [log.session.name, formats.instantWithZone(new Date(log.startsAt))],
    blocks: [
      text(seam.cautions),
      ...log.kinds.flatMap((kind) => limitBlocks(kind, formats)),
      heading(seam.checks),
      table(columns(formats), [
        ...log.checks.map((check) => checkRow(check, log, formats)),
        ...Array.from({ length: PEN_ROWS }, (): Row => ({ kind: 'pen', cells: Array(9).fill('') })),
      ]),
      ...log.lines.map((line) => text(lastGoodOf(line, formats))),
      ...(log.windows.length === 0
        ? [heading(seam.failure), penFailure(formats)]
        : log.windows.flatMap((window) => failureBlocks(window, log, formats))),
      { kind: 'signatures', boxes: [seam.sign] } as const,
    ],
  };
  return {
    subject: subject('seam-log', { subjectId: sessionId }),
    contentWith: () => content,
    isLandscape: true,
  };
}

function limitBlocks({ kind, limit }: Log['kinds'][number], formats: Formats): Block[] {
  const { seam } = formats.words;
  const { range } = seam;
  return [
    heading(seam.limitsOf(nameOf(kind, formats))),
    facts([
      { name: seam.width, value: range(limit.widthLeast, limit.widthMost) },
      { name: seam.thickness, value: range(limit.thicknessLeast, limit.thicknessMost) },
      { name: seam.countersink, value: range(limit.countersinkLeast, limit.countersinkMost) },
      { name: seam.overlap, value: seam.atLeast(limit.overlapPercent) },
      { name: seam.plates, value: seam.platesOf(limit.lidPlate, limit.bodyPlate) },
      { name: seam.from, value: limit.source },
    ]),
  ];
}

function columns({ words: { seam } }: Formats) {
  return [
    { name: seam.time, penWidth: 60, isKey: true },
    { name: seam.machine, penWidth: 70 },
    { name: seam.serial, penWidth: 40 },
    { name: seam.how, penWidth: 60 },
    { name: seam.measures, penWidth: 90 },
    { name: seam.overlap, penWidth: 40 },
    { name: seam.gauge, penWidth: 40 },
    { name: seam.result, penWidth: 60 },
    { name: seam.operator, penWidth: 70 },
  ];
}

function checkRow(check: Check, log: Log, formats: Formats): Row {
  const { seam } = formats.words;
  const { measures, serial } = check;
  const overlap = log.overlapTenths.get(check.id);
  return {
    cells: [
      formats.iso(new Date(check.checkedAt)),
      `${machineOf(check.machineId, log)}\n${seam.line(check.line)}`,
      serial === null ? seam.trial : String(serial),
      `${seam.hows[check.how] ?? check.how}\n${seam.occasions[check.occasion] ?? check.occasion}`,
      measures
        ? `${seam.read(measures.widthMils, measures.thicknessMils, measures.countersinkMils)}\n${seam.hooks(measures.coverHookMils, measures.bodyHookMils)}`
        : seam.notMeasured,
      overlap === undefined ? seam.notMeasured : `${formats.tenths(overlap)} %`,
      check.gauge || seam.notMeasured,
      resultOf(check, formats).join('\n'),
      check.checkedByName,
    ],
  };
}

/** What a check came to: whether it passed, what was wrong, and what was noted. */
export const resultOf = (
  { passed, faults, looksGood, note }: Pick<Check, 'passed' | 'faults' | 'looksGood' | 'note'>,
  { words: { seam } }: Formats,
): string[] => [
  passed ? seam.passed : seam.failed,
  ...faults.map(({ measure }) => seam.faults[measure]),
  ...(looksGood ? [] : [seam.looks]),
  ...(note ? [note] : []),
];

const machineOf = (machineId: string, { machines }: Log): string =>
  machines.find(({ id }) => id === machineId)?.name ?? '';

function lastGoodOf({ line, machine, lastGood, closedSince }: Log['lines'][number], formats: Formats) {
  const { seam } = formats.words;
  const at = lastGood && formats.iso(new Date(lastGood.checkedAt));
  return at === null
    ? seam.neverGood(line, machine.name)
    : seam.lastGood(line, machine.name, at, closedSince);
}

/** A failed check: when the machine stopped, what stands in doubt, what became of it, and the three that cleared it. */
function failureBlocks({ check, suspects }: Window, log: Log, formats: Formats): Block[] {
  const { seam } = formats.words;
  const first = suspects[0]?.serial ?? 0;
  const last = suspects.at(-1)?.serial ?? 0;
  const answers = [...new Set(suspects.map(({ disposition }) => disposition))];
  const clears = log.clears.get(check.id) ?? [];
  return [
    heading(`${seam.failure}: ${machineOf(check.machineId, log)}`),
    facts([
      { name: seam.stopped, value: formats.iso(new Date(check.checkedAt)) },
      { name: seam.suspect, value: seam.window(check.line, first, last, suspects.length) },
      {
        name: seam.action,
        value: answers
          .map((answer) =>
            seam.answered(
              seam.answers[answer ?? 'open'] ?? '',
              suspects.filter(({ disposition }) => disposition === answer).length,
            ),
          )
          .join(', '),
      },
      ...CLEARS.map((which, at) => {
        const clear = clears[at];
        return { name: seam.clears[which], value: clear ? formats.iso(new Date(clear.checkedAt)) : '' };
      }),
    ]),
  ];
}

const penFailure = ({ words: { seam } }: Formats): Block =>
  facts(
    [seam.stopped, seam.suspect, seam.action, ...CLEARS.map((which) => seam.clears[which])].map((name) => ({
      name,
      value: '',
    })),
  );
