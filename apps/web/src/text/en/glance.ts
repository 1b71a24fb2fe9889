const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The questions of whoever leads packing, each with its answer for the day that comes or runs. */
export const en = {
  title: 'The day at a glance',
  finish: 'When will we finish?',
  finishAt: (at: string, containers: string) => `At ${at}, with ${containers} containers.`,
  nothing: 'Nobody has said yet what to pack.',
  tooFew: 'There are too few people to run a line.',
  people: 'Do enough people come?',
  bottleneck: 'Where does it jam?',
  sets: (stations: string, seconds: string) => `${stations}: ${seconds} s a container.`,
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
  due: (machine: string) => `${machine}: check it now.`,
  noMachine: 'No line has closed anything yet.',
  suspects: 'Which cans are suspect?',
  none: 'None.',
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
  scrap: 'What was lost, and to what?',
  scrapBy: (spilled: string, sampled: string, undone: number) =>
    `${spilled} g spilled, ${sampled} g in samples; ${s(undone, 'can was', 'cans were')} put back.`,
  notHere: 'Who is not here to take cans?',
  allHere: 'Everybody with a time is here.',
};
