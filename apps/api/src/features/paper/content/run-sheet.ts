import { POUR_BOUNDS, saidFinish } from '@sheafbook/packing';
import { presentTares } from '../../container-tare/present.ts';
import { readTares } from '../../container-tare/use-cases.ts';
import { presentPlan } from '../../packing-session/present.ts';
import { readPlan } from '../../packing-session/use-cases.ts';
import { presentBringable } from '../../pour-log/present.ts';
import { readBringable } from '../../pour-log/use-cases.ts';
import { presentSessionSupplies } from '../../supply/present.ts';
import { planSessionSupplies } from '../../supply/use-cases.ts';
import { type Block, facts, heading, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, nameOf, subject } from './making.ts';

type Plan = ReturnType<typeof presentPlan>;
type Line = Plan['lines'][number];
type Run = Line['runs'][number];
type Bag = ReturnType<typeof presentBringable>;
type Scale = Plan['scales'][number];
type Tare = ReturnType<typeof presentTares>['tares'][number];
type Supply = ReturnType<typeof presentSessionSupplies>['lines'][number]['supply'];

/** The run sheet of a packing day (paper 7): what each line fills in which order, with room for the pen of whoever leads it. */
export async function makeRunSheet({ context, formats }: Desk, sessionId: string): Promise<MadePaper> {
  const plan = presentPlan(await readPlan(context, sessionId));
  const bags = (await readBringable(context, sessionId)).map(presentBringable);
  const { tares } = presentTares(await readTares(context));
  const { lines: needed } = presentSessionSupplies(await planSessionSupplies(context, sessionId));
  const spoiling = needed.flatMap(({ supply }) => spoilingOf(supply, formats));
  const { session } = plan;
  const { run } = formats.words;
  const content = {
    about: [session.name, formats.instantWithZone(new Date(session.startsAt))],
    blocks: [
      facts([
        { name: run.lead, value: '' },
        { name: run.place, value: session.place },
      ]),
      heading(run.before),
      text(run.setup(session.setupMinutes)),
      ...(plan.scales.length === 0
        ? [text(run.noScale)]
        : plan.scales.map((scale) => text(saidOfScale(scale, formats)))),
      ...spoiling.map((words) => text(words)),
      text(run.cautions),
      ...plan.lines.flatMap((line, at) => lineBlocks({ line, no: at + 1, plan, bags, tares, formats })),
      heading(run.cleaning),
      text(run.cleanDown(session.cleanDownMinutes)),
      { kind: 'signatures', boxes: [run.sign] } as const,
    ],
  };
  return {
    subject: subject('run-sheet', { subjectId: sessionId }),
    contentWith: () => content,
    isLandscape: true,
  };
}

type Of = {
  line: Line;
  no: number;
  plan: Plan;
  bags: readonly Bag[];
  tares: readonly Tare[];
  formats: Formats;
};

function lineBlocks(of: Of): Block[] {
  const { line, no, plan, formats } = of;
  const { run } = formats.words;
  if (line.runs.length === 0) return [heading(run.line(no)), text(run.nothing)];
  const finish = line.finishSeconds;
  return [
    heading(run.line(no)),
    facts([
      ...line.blocks.map(({ stations, people }) => ({
        name: run.crew(stations.map((station) => run.stations[station] ?? station).join(', '), people),
        value: standingAt(stations, no, of),
      })),
      { name: run.machine, value: '' },
      { name: run.scale, value: line.scale === null ? '' : scaleName(line.scale) },
    ]),
    ...(finish === null
      ? [text(run.tooFew)]
      : [
          text(
            [
              `${run.ends(hourOf(plan, saidFinish(finish), formats))}. ${run.rest(plan.session.breakMinutes)}`,
              ...(line.lids ? [run.lids(hourOf(plan, saidFinish(line.lids.lastSecond), formats))] : []),
            ].join(' '),
          ),
        ]),
    table(
      columns(formats),
      line.runs.map((one, at) => runRow(one, at + 1, of)),
    ),
    ...mixedBlocks(line, formats),
    ...dryIceCautions(line, formats),
    facts([
      { name: `${run.totals}: ${run.made}`, value: '' },
      { name: run.scrapped, value: '' },
      { name: run.left, value: '' },
    ]),
  ];
}

/** Who is meant to stand at some stations, spell by spell; empty for the pen where nobody has said that they come. */
function standingAt(stations: readonly string[], no: number, { plan, formats }: Of): string {
  return plan.spells
    .flatMap(({ startsAtSecond, blocks }) => {
      const block = blocks.find((one) => one.line === no && one.stations.join() === stations.join());
      return block && block.names.length > 0
        ? [`${hourOf(plan, startsAtSecond, formats)} ${block.names.join(', ')}`]
        : [];
    })
    .join('; ');
}

function columns({ words: { run } }: Formats) {
  return [
    { name: run.no, isNumber: true, isKey: true },
    { name: run.starts },
    { name: run.what },
    { name: run.container },
    { name: run.target, isNumber: true },
    { name: run.units, isNumber: true },
    { name: run.packets },
    { name: run.serials },
    { name: run.minds },
    { name: run.done, penWidth: 40 },
  ];
}

function runRow(one: Run, no: number, { line, plan, bags, tares, formats }: Of): Row {
  const { run } = formats.words;
  const own = bags.filter(
    ({ householdId, food }) => householdId === one.householdId && food.id === one.food.id,
  );
  return {
    kind: 'pen',
    cells: [
      String(no),
      line.finishSeconds === null ? '' : hourOf(plan, one.startsAtSecond, formats),
      [
        nameOf(one.food, formats),
        ...(own.length === 0 ? [] : [run.bags(own.map(({ bagNo }) => bagNo).join(', '))]),
        formats.words.seatName(one.household, one.seat),
        ...line.mixes
          .filter(({ id }) => id === one.mixId)
          .map((mix) => run.mixed(formats.count(mix.containers))),
      ].join('\n'),
      [nameOf(one.kind, formats), ...saidOfTare(one, tares, formats)].join('\n'),
      `${formats.grams(one.gramsEach)}\n${run.tolerance(formats.grams(POUR_BOUNDS.singleGrams))}`,
      formats.count(one.containers),
      goesIn(one, formats),
      `${one.fromSerial}–${one.toSerial}`,
      mindsOf(one, line, formats),
      '',
    ],
  };
}

/** What an empty one weighs and a full one shows, where ten of the kind were weighed; or that each is weighed by itself. */
function saidOfTare({ kind, gramsEach }: Run, tares: readonly Tare[], formats: Formats): string[] {
  const { run } = formats.words;
  const tare = tares.find((one) => one.kind.id === kind.id);
  if (!tare) return [];
  return tare.isAlike
    ? [run.tare(formats.grams(tare.meanGrams), formats.grams(gramsEach + tare.meanGrams))]
    : [run.tareEach];
}

/** Packets, or dry ice with how long the lid waits for it. */
function goesIn({ packets, dryIce }: Run, formats: Formats): string {
  const { run } = formats.words;
  if (dryIce)
    return run.dryIce(
      formats.grams(dryIce.gramsEach),
      formats.grams(dryIce.gramsInAll),
      formats.count(dryIce.waitMinutes),
    );
  const said = packets.map(({ count, sizeMillilitres }) => run.packet(count, formats.count(sizeMillilitres)));
  return said.join('\n') || run.noPackets;
}

/** What each household puts into a run that is mixed, and has of it. */
function mixedBlocks({ mixes }: Line, formats: Formats): Block[] {
  const { run, seatName } = formats.words;
  return mixes.flatMap((mix) => [
    text(run.mixedSays(nameOf(mix.food, formats), nameOf(mix.kind, formats))),
    table(
      [
        { name: run.mixedHousehold, isKey: true },
        { name: run.mixedIn, isNumber: true },
        { name: run.units, isNumber: true },
        { name: run.mixedLeft, isNumber: true },
        { name: run.mixedGot, isNumber: true },
      ],
      mix.shares.map((share) => ({
        cells: [
          seatName(share.household, share.seat),
          formats.count(share.putInGrams),
          formats.count(share.containers),
          formats.count(share.leftGrams),
          formats.count(share.gotGrams),
        ],
      })),
    ),
  ]);
}

/** Under the runs of a line that take dry ice: what it can do, and whose word comes first. */
function dryIceCautions(line: Line, { language, words: { run } }: Formats): Block[] {
  const cautions = line.runs.find(({ dryIce }) => dryIce !== null)?.dryIce?.cautions ?? [];
  return cautions.map(({ say, deferTo }) => text(run.caution(say[language], deferTo[language])));
}

const scaleName = ({ itemName, unitNo, code }: Scale) => `${itemName} ${unitNo} (${code})`;

/** What of a supply nobody should pack with on the day, since its last good day is past or will be. */
const spoilingOf = ({ name, spoiling }: Supply, formats: Formats): string[] =>
  spoiling.map(({ standing, pieces, useBy }) =>
    formats.words.run.spoiling[standing](name, formats.count(pieces), formats.day(useBy)),
  );

/** Whether a scale of the day is to be weighed on, by its last check. */
function saidOfScale(scale: Scale, formats: Formats): string {
  const { verdict, offByGrams, checkedOn } = scale;
  const off = formats.grams(Math.abs(offByGrams ?? 0));
  return formats.words.run.scales[verdict](
    scaleName(scale),
    off,
    checkedOn === null ? '' : formats.day(checkedOn),
  );
}

/** What the run carries, what is to be cleaned before it, and whether somebody must not meet what ran before: no name. */
function mindsOf(one: Run, line: Line, { words }: Formats): string {
  const { run, allergens, label } = words;
  const names = one.carries.map((code) => (code === 'gluten' ? label.gluten : (allergens[code] ?? code)));
  const { changeoverMinutes } = one;
  return [
    names.length === 0 ? run.noAllergens : names.join(', '),
    ...(changeoverMinutes === 0
      ? []
      : [changeoverMinutes > 5 ? run.fullClean(changeoverMinutes) : run.wipeDown(changeoverMinutes)]),
    ...(line.clashes.some(({ wishId }) => wishId === one.wishId) ? [run.clash] : []),
  ].join('\n');
}

/** On the wall of the storehouse, to the minute. */
const hourOf = ({ session }: Plan, seconds: number, formats: Formats): string =>
  formats.iso(new Date(Date.parse(session.startsAt) + seconds * 1000)).slice(-5);
