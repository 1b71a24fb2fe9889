const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Seams and seals: checks, machines, makers’ limits, and what a failed check leaves in doubt. */
export const en = {
  seals: 'Seams and seals',
  machines: 'Machines and limits',
  packing: 'Packing',
  toLog: 'Pour log',
  toMachines: 'Machines and makers’ limits',
  inDoubt: (count: number) => `${s(count, 'container is', 'containers are')} in doubt.`,
  isOut: (name: string) => `${name} is out.`,
  checkNow: 'A seal is to be checked now.',
  allGood: 'Every machine passed its last check.',
  dayOver: 'The day is over: no check is due any more.',
  nothingDue: 'nothing is due any more.',
  noMachines: 'No machine is written down yet. Add the one that closes your containers first.',
  lineOf: (line: number, name: string) => `Line ${line}, ${name}:`,
  outSays: (name: string, since: string) =>
    `${name} out since ${since}. Close nothing with it: adjust it, then close three trial containers, open each, and write each check down. Three good ones in a row let it run.`,
  nextIn: (containers: number, minutes: number) =>
    `next check after ${s(containers, 'container', 'containers')} or ${s(minutes, 'minute', 'minutes')}, after a jam, an adjustment or another size, and of the last one.`,
  nextOne: 'check the next one that it closes: the hour since the last good check is over.',
  dueBecause: {
    first: 'check the first one before you close any more.',
    changeover: 'check now: the size of the container changed.',
    count: 'check now: that many were closed since the last good check.',
    time: 'check now: the hour since the last good check is over.',
  },
  sinceGood: (count: number, serial: number | null, at: string) =>
    `${s(count, 'container', 'containers')} closed since the last good check, ${serial === null ? 'of a trial' : `of number ${serial}`}, ${at}.`,
  neverGood: 'No good check yet.',
  checks: (count: number) => s(count, 'check so far', 'checks so far'),
  passed: 'Passed:',
  failed: 'Failed:',
  placeOf: (line: number, serial: number | null) =>
    serial === null ? `line ${line}, a trial` : `line ${line}, number ${serial}`,
  writeCheck: 'Check a seal',
  openSerial: (serial: number) => `Open number ${serial} and check it`,
  machine: 'Machine',
  container: 'Container',
  line: 'Line',
  serial: 'Number of the container',
  serialHint: 'Empty for one that was closed only to try the machine.',
  how: 'How',
  hows: { teardown: 'Torn down and measured', visual: 'Looked at', squeeze: 'Squeezed and tugged' },
  occasion: 'Why now',
  occasions: {
    first: 'The first one',
    due: 'It was due',
    jam: 'After a jam',
    adjustment: 'After an adjustment',
    changeover: 'Another size of container',
    last: 'The last one',
    suspect: 'One in doubt',
    clearing: 'Trial of a machine that is out',
  },
  cautions: {
    teardown:
      'A torn can has edges like knives: cut-proof gloves, and unplug the machine before a hand goes near it (the maker’s manual; OSHA 29 CFR 1910.212 as a model).',
    visual:
      'Run a finger beside the seam, never along a sharp edge. A can that is dented at its seam or swollen is neither opened nor eaten; ask your county extension office or health department.',
    squeeze:
      'A sealing bar burns: let it cool, and keep fingers and loose sleeves away (the maker’s manual).',
  },
  looks: {
    teardown: 'It looks good: no wrinkle, no sharp edge, no false seam, no dent',
    visual: 'It looks good: the lid does not turn, no sharp edge, no false seam, no dent at the seam',
    squeeze: 'It holds: no bubble under water, nothing gives when tugged, no wrinkle across the seal',
  },
  noLimits: 'Nobody has written down what the maker of this can allows, and a seam is judged by that alone.',
  writeLimits: 'Write the limits down',
  measured: 'What the gauge reads',
  limitsFrom: (source: string) => `Limits: ${source}`,
  unit: 'Unit',
  units: { mil: 'thousandths of an inch', mm: 'millimetres' },
  gauge: 'Gauge number',
  measures: {
    widthMils: 'Seam width',
    thicknessMils: 'Thickness',
    countersinkMils: 'Countersink',
    coverHookMils: 'Cover hook',
    bodyHookMils: 'Body hook',
  },
  allowed: (least: string, most: string) => `${least} to ${most}`,
  overlapFrom: (percent: number) => `The overlap is reckoned from it: at least ${percent} %.`,
  measureProblem: 'Write a measure, such as 58 or 1.47.',
  tooNarrow: 'A seam is wider than its plates; measure it again.',
  note: 'Note',
  faults: { width: 'width', thickness: 'thickness', countersink: 'countersink', overlap: 'overlap' },
  outOfLimits: (what: string) =>
    `Outside what the maker allows: ${what}. This seam fails, whatever it looks like: stop the machine.`,
  writeIt: 'Write the check down',
  writeFailed: 'Write it down as failed',
  notThis: 'Not this one',
  fromTo: (from: number, to: number) => `${from} to ${to}`,
  windowOf: (line: number, from: number, to: number) => `Line ${line}, numbers ${from} to ${to} are in doubt`,
  answered: (from: number, to: number) => `Numbers ${from} to ${to} were in doubt, and all are answered for.`,
  states: { suspect: 'in doubt', cleared: 'passed', opened: 'opened, good', bad: 'failed' },
  stripLabel: (all: number, doubt: number, good: number, bad: number) =>
    `${all} containers in the order in which they were closed: ${doubt} in doubt, ${good} good, ${bad} failed.`,
  random:
    'A good one after a bad one: the fault comes and goes, so halving no longer helps. What is in doubt is tested one by one, or goes into new cans.',
  next: (serial: number, code: string, name: string) =>
    `Open number ${serial} next (${code}, ${name}). If it is good, all before it are; if not, the fault was there already.`,
  openNext: (serial: number) => `Open number ${serial}`,
  whoHas: (count: number) => `Who has them: ${s(count, 'household', 'households')}, each told`,
  answer: 'What becomes of them',
  which: 'Which',
  thatPassed: (count: number) => `${count} that passed`,
  theRest: (count: number) => `${count} that did not`,
  ofOwner: (name: string, count: number) => `${name}: ${count}`,
  whatToDo: 'Answer',
  dispositions: {
    're-can': 'New can, new absorber',
    'eat-now': 'Eat now, keep no longer',
    discard: 'Throw away',
  },
  found: 'What was found',
  foundHint: 'Its owner reads this.',
  ownDoubts: 'In doubt',
  ownDoubtsTitle: (count: number) =>
    count === 0
      ? 'None of your containers is in doubt.'
      : count === 1
        ? 'A seal puts 1 of your containers in doubt.'
        : `A seal puts ${count} of your containers in doubt.`,
  advice: {
    wait: 'Wait',
    're-can': 'Bring them back',
    'eat-now': 'Eat them now',
    discard: 'Throw them away',
    moved: 'In new containers',
  },
  adviceSays: {
    wait: 'Do not open them, eat from them or give them away. You are told what is found.',
    're-can': 'What is in them goes into new containers with fresh absorbers. Bring them back closed.',
    'eat-now': 'Open them soon and keep what is in them no longer.',
    discard: 'Do not eat what is in them, and do not give it away.',
    moved: 'The old codes have ended. Nothing is left for you to do.',
  },
  ownCode: 'Code',
  ownFood: 'Food',
  whyDoubted: 'What was found',
  movedTo: (code: string, newCode: string) => `${code}, now ${newCode}`,
  numberAt: (serial: number, day: string) => `Number ${serial} of ${day} waits for its answer`,
  toShelf: 'To the shelf',
  reCan: 'Put them into new cans',
  reCanSays:
    'Each goes gram by gram into a new can of the same owner and the same lot. The old code ends; its owner is told the new one. Print its label, then check the new seal.',
  allToReCan: (count: number) => (count === 1 ? 'The one that waits' : `All ${count} that wait`),
  oneToReCan: (serial: number, code: string, whose: string) => `Number ${serial}, ${code}, ${whose}`,
  newKind: 'New container',
  newTreatment: 'Treatment',
  reCanIt: (count: number) => (count === 1 ? '1 is in a new can' : `${count} are in new cans`),
  inNewCans: 'In new cans',
  oldCode: 'Old code, owner',
  newCode: 'New code',
  grams: 'Grams',
  notMoved: 'One was written down by mistake',
  why: 'Why',
  takeBack: 'It is in the old can still',
  foodCaution:
    'Food that is swollen, wet, mouldy or smells wrong is neither eaten nor given away. Your county extension office or health department decides, not this page.',
  answerIt: {
    release: (count: number) => `Let ${count} go as good`,
    're-can': (count: number) => `Put ${count} into new cans`,
    'eat-now': (count: number) => `Have ${count} eaten now`,
    discard: (count: number) => `Throw ${count} away`,
  },
  machinesStand: (count: number, out: number) =>
    count === 0
      ? 'No machine is written down yet.'
      : `${s(count, 'machine', 'machines')}, ${out === 0 ? 'none of them out' : `${out} of them out`}.`,
  machineKinds: {
    'can-seamer': 'Can seamer',
    'heat-sealer': 'Heat sealer',
    'vacuum-sealer': 'Vacuum sealer',
  },
  machineCaution:
    'One trained person works it, guard on, no loose sleeves (the maker’s manual; OSHA 29 CFR 1910.212 as a model).',
  addMachine: 'Add a machine',
  machineKind: 'Kind',
  name: 'Name',
  add: 'Add it',
  limits: 'What the makers allow',
  limitsSay:
    'Take these from the sheet of the can’s, the lid’s or the machine’s maker. We know none of our own, and a teardown without them is refused.',
  limitSaid: (of: {
    width: string;
    thickness: string;
    countersink: string;
    overlap: number;
    unit: string;
    source: string;
  }) =>
    `width ${of.width}, thickness ${of.thickness}, countersink ${of.countersink} ${of.unit}, overlap at least ${of.overlap} %. ${of.source}`,
  figures: {
    widthLeast: 'Width, least',
    widthMost: 'Width, most',
    thicknessLeast: 'Thickness, least',
    thicknessMost: 'Thickness, most',
    countersinkLeast: 'Countersink, least',
    countersinkMost: 'Countersink, most',
    lidPlate: 'Plate of the lid',
    bodyPlate: 'Plate of the body',
  },
  overlapPercent: 'Overlap, least (%)',
  source: 'Which maker’s sheet',
  sourceHint: 'Its name and date, so that somebody else finds it.',
  keepLimits: 'Keep these limits',
};
