/** What a household wants its share of a food packed in. */
export const en = {
  title: (food: string) => `${food}: what yours is packed in`,
  stands: (food: string, mass: string, basis: string) => `Your share of ${food} is ${mass}, as ${basis}.`,
  bases: { awarded: 'awarded', allotted: 'the fixed buy promises it', pledged: 'you pledged it' } as Record<
    string,
    string
  >,
  none: (food: string) => `You have no share of ${food} yet. A wish can stand already.`,
  wishes: 'Your wishes, one after another',
  wishesWords: 'Write how much goes into each kind. The last line takes the rest when it is left empty.',
  kind: (at: number) => `Kind ${at}`,
  mass: (at: number) => `How much of it, line ${at}`,
  rest: 'Empty: all the rest.',
  massProblem: 'Write a weight, such as 120 lb or 50 kg. Only the last line may be empty.',
  add: 'One more kind',
  drop: (at: number) => `Drop line ${at}`,
  keep: 'Keep these wishes',
  comesTo: 'What that comes to',
  columns: { kind: 'Kind', count: 'Containers', each: 'In each', together: 'Together', cost: 'Costs' },
  costUnknown: 'not known',
  remainder: (mass: string) =>
    `${mass} fill no whole container. They stay in their bag, unless a last kind takes the rest.`,
  noRemainder: 'Nothing is left over.',
  level: 'Counted filled level, before shaking.',
  noBulk: 'Nobody knows how heavy this food lies, so containers can’t be counted.',
  noWishes: 'Nothing is wished yet, so all of it stays in its bags.',
};

export type WishWords = typeof en;
