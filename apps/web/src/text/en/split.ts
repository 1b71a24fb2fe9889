const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Words of the pages where what landed is shared. */
export const en = {
  splitting: 'Splitting',
  allFoods: 'All foods',
  splitOf: (food: string) => `${food}: how it is split`,
  notLanded: 'Nothing can be split before it has landed.',
  splitStands: (open: number, foods: number) =>
    open === 0
      ? `All ${s(foods, 'food is', 'foods are')} split.`
      : `${open} of ${s(foods, 'food is', 'foods are')} still to be split.`,
  compareRules: 'Compare the six rules, then choose',
  splitBy: (rule: string, mass: string) => `${mass}, ${rule}`,
  isSplit: 'split',
  notSplit: 'to split',
  toHandingOver: 'Hand it over',
  shareOutTitle: 'Share out what it cost',
  shareOutPosts:
    'Posts every household’s part of goods, freight and other costs to its account, to the cent, and settles its deposit. From then on a split stands.',
  shareOut: 'Share out',

  rules: {
    proportional: 'Proportional',
    'equal-awards': 'Equal awards',
    'equal-losses': 'Equal losses',
    'first-come': 'First come',
    'need-first': 'Need first',
    'rotation-of-loss': 'Rotation of loss',
  } as Record<string, string>,
  byRule: {
    proportional: 'in proportion',
    'equal-awards': 'by equal awards',
    'equal-losses': 'by equal losses',
    'first-come': 'first come, first filled',
    'need-first': 'by need first',
    'rotation-of-loss': 'by rotation of loss',
  } as Record<string, string>,
  ruleWords: {
    proportional: 'All lose the same part of what they claimed.',
    'equal-awards': 'All get up to the same most.',
    'equal-losses': 'All lose the same grams.',
    'first-come': 'Who pledged first is filled first.',
    'need-first': 'Whoever has least days left is raised first.',
    'rotation-of-loss': 'Who bore more last time bears less now.',
  } as Record<string, string>,
  landedShort: (food: string, short: string, grams: string) =>
    `${food} landed ${short} g short of its claims. Six rules share the ${grams} g that came.`,
  landedWhole: (food: string, grams: string) => `${food}: ${grams} g came, and every claim can be met.`,
  yoursByRule: (food: string, grams: string) =>
    `${food}: ${grams} g came. This is what each rule would give you.`,
  sixRules: 'Six rules side by side: grams, and the cost of the goods',
  household: 'Household',
  claimGrams: 'Claim, g',
  commonStock: 'Common stock',
  whole: 'Whole',
  groupsRule: 'the group’s rule',
  byGroupsRule: 'This is the group’s rule.',
  tieBreak: 'Grams and cents go to the largest remainder; a tie goes to the lower seat.',
  needIsPrivate: 'Days covered stay private: the sheet prints rule and awards only.',
  centsEstimate: 'The cents are an estimate until every bill is in.',
  splitByRule: (rule: string) => `Split ${rule}`,
  splitPosts: (grams: string) =>
    `Posts ${grams} g: each piece of a bag becomes its household’s. It can be taken back until the buy is shared out.`,
  ruleStands: 'What comes later is split by the rule of the first part.',

  wasSplit: (food: string, rule: string) => `${food}: split ${rule}.`,
  round: (no: number) => `Part ${no}`,
  landed: 'Landed',
  claimed: 'Claimed',
  given: 'Given',
  whoGetsWhat: (round: number) => `Who gets what of part ${round}, and out of which bags`,
  exactly: 'Exactly',
  awardGrams: 'Gets, g',
  inBags: 'Out of',
  piece: (bagNo: number, code: string, grams: string) => `bag ${bagNo} (${code}): ${grams} g`,
  spareMark: '↑',
  spareMarkWords: '↑ got the odd gram of its remainder.',
  pieces: (count: number, isFewest: boolean) =>
    isFewest
      ? `${s(count, 'piece', 'pieces')}: fewer is not possible.`
      : `${s(count, 'piece', 'pieces')}; whether fewer would do was not proved.`,
  madeAt: (at: string) => `Split ${at}.`,
  lost: (losses: readonly string[]) => `Lost before: ${losses.join(', ')}.`,
  causes: {
    spilled: 'spilled',
    sampled: 'sampled',
    discarded: 'thrown away',
    composted: 'composted',
    animals: 'to animals',
    moisture: 'dried, or grown damper',
    unexplained: 'unexplained',
  } as Record<string, string>,
  simulation: 'The last three splits under each rule',
  simulationWords:
    'What each rule would have given, in grams, from the claims that stood then. It is here to choose the group’s rule by, and posts nothing.',
  simulated: (food: string, buy: string, at: string) => `${food}, ${buy}, ${at}`,
  simulatedWas: (rule: string, grams: string) => `${grams} g were split ${rule}.`,
  itWas: 'it was',
  noSplits: 'Nothing has been split yet.',
  noPartInIt: 'Your household had no part in it.',
  notKnown: 'not read',
  needNotRead:
    'Need first reads what households eat and hold. That is read only when a split goes by it, so it can’t be told of the others.',
  undoWords: 'All of it becomes nobody’s again and can be split by another rule.',
  undo: 'Take this split back',
};
export type SplitWords = typeof en;
