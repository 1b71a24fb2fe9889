const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The questions of whoever leads packing, each with its answer for the day that comes or runs. */
export const en = {
  title: 'The day at a glance',
  finish: 'When will we finish?',
  finishAt: (at: string, containers: string) => `At ${at}, with ${containers} containers.`,
  finishBehind: (at: string, planned: string, minutes: string) =>
    `At ${at} as it goes, ${minutes} minutes behind the plan’s ${planned}.`,
  nothing: 'Nobody has said yet what to pack.',
  tooFew: 'There are too few people to run a line.',
  people: 'Do enough people come?',
  bottleneck: 'Where does it jam?',
  supplies: 'Do we have all supplies?',
  allThere: 'All of it is there.',
  short: (name: string, pieces: string) => `${name}: ${pieces} short`,
  unkept: (count: number) => `${s(count, 'thing is', 'things are')} on no list of the store`,
  order: 'In what order do the foods run?',
  overPour: 'Are we over-pouring?',
  onTarget: 'No: nothing is given away.',
  under: (grams: string, count: number) =>
    `No: ${grams} g under after ${s(count, 'container', 'containers')}.`,
  seamer: 'Is the seamer in limits?',
  stopped: (machine: string) => `${machine} is stopped.`,
  good: (machine: string, since: number, left: number, minutes: number) =>
    `${machine}: ${s(since, 'container', 'containers')} since the good check; the next after ${left} or ${s(minutes, 'minute', 'minutes')}.`,
  nextOne: (machine: string) =>
    `${machine}: the hour since the last good check is over; check the next one that it closes.`,
  due: (machine: string) => `${machine}: check it now.`,
  noMachine: 'No line has closed anything yet.',
  suspects: 'Which cans are suspect?',
  none: 'None.',
  toReCan: (count: number) =>
    `None is in doubt; ${count === 1 ? 'one that did not pass waits for a new can' : `${count} that did not pass wait for new cans`}.`,
  inDoubt: (line: number | null, from: number, to: number, count: number) =>
    `${line === null ? '' : `Line ${line}, `}numbers ${from} to ${to}: ${s(count, 'container', 'containers')}.`,
  pack: 'When must the open absorber pack be shut?',
  noPack: 'No pack stands open.',
  packBy: (at: string, packets: number) => `By ${at}; it held ${s(packets, 'packet', 'packets')}.`,
  mass: 'Does the mass add up?',
  trained: 'Who is trained on the seamer?',
  nobodyTrained: 'Nobody who comes said so.',
  labels: 'Which labels are printed but unused?',
  labelsWait: (blank: number, spent: number) =>
    `${blank === 0 ? 'None waits' : s(blank, 'waits', 'wait')}${spent === 0 ? '.' : `; ${s(spent, 'code was', 'codes were')} voided.`}`,
  onLine: 'Whose food is on the line?',
  foodOf: (food: string, household: string) => `${food} of ${household}.`,
  lastAllergens: 'Which allergens were on the line last?',
  left: 'How many cans are left for whom?',
  cansLeft: ({ household, count }: { household: string; count: number }) => `${household}: ${count}`,
  unmeasured: 'Which foods have no moisture reading?',
  heaviest: 'What is the heaviest lift?',
  bagOf: (bagNo: number, mass: string) => `Bag ${bagNo}: ${mass}.`,
  lifted: {
    one: 'One person may lift it (NIOSH 94-110; your physician’s word comes first).',
    'one-held-close':
      'One person, only between knee and chest and close to the body (NIOSH 94-110; your physician’s word comes first).',
    two: 'Two people or a dolly (NIOSH 94-110; your physician’s word comes first).',
  },
  scrap: 'What was lost, and to what?',
  scrapBy: (spilled: string, sampled: string, undone: number) =>
    `${spilled} g spilled, ${sampled} g in samples; ${s(undone, 'can was', 'cans were')} put back.`,
  cleanDown: 'What is left for clean-down?',
  notHere: 'Who is not here to take cans?',
  allHere: 'Everybody with a time is here.',
  pastDay: (name: string) => `What the last day left: ${name}`,
  passed: (machine: string, when: string) => `${machine}: in limits at its last check, ${when}.`,
  failed: (machine: string, when: string) => `${machine}: out of limits at its last check, ${when}.`,
  unchecked: 'Nothing was checked that day.',
  rate: 'How many containers an hour?',
  rateOf: (rate: string, count: number) => `${rate}, over ${s(count, 'container', 'containers')}.`,
  noRate: (count: number) => `${s(count, 'container', 'containers')}, written down in one go.`,
};
