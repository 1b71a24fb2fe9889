/** A pack that a buy offers, as closeGapWhole reads it. */
export type CountedPack = { readonly grams: number; readonly minorUnits: number; readonly mostPacks: number };

/** Some packs of one group together; `counts` stand in the order of the packs. */
export type PackChoice = {
  readonly grams: number;
  readonly minorUnits: number;
  readonly packCount: number;
  readonly counts: readonly number[];
};

const NO_PACKS: PackChoice = { grams: 0, minorUnits: 0, packCount: 0, counts: [] };

/**
 * Every choice of packs worth making to get some grams, in the order of rising grams: no other choice of the list is
 * as heavy and better. Better is cheaper, then fewer packs, then more of the earlier packs. Grams above `enoughGrams`
 * are worth nothing more, and choices dearer than the budget are left out.
 */
export function worthwhileChoices(
  packs: readonly CountedPack[],
  enoughGrams: number,
  budgetMinorUnits: number,
): PackChoice[] {
  let choices = [NO_PACKS];
  for (const [position, pack] of packs.entries()) {
    choices = choices.map((choice) => ({ ...choice, counts: [...choice.counts, 0] }));
    for (const bundle of bundlesOf(pack, enoughGrams)) {
      const more = choices.map((choice) => withBundle(choice, { pack, position, bundle }));
      const affordable = more.filter(({ minorUnits }) => minorUnits <= budgetMinorUnits);
      choices = bestOnly([...choices, ...affordable.map((choice) => capped(choice, enoughGrams))]);
    }
  }
  return choices;
}

/** Doubling bundles make any count from 0 to the most with few of them: 1, 2, 4 … and what is left. */
function bundlesOf({ grams, mostPacks }: CountedPack, enoughGrams: number): number[] {
  const bundles: number[] = [];
  let left = Math.min(mostPacks, Math.ceil(enoughGrams / grams));
  for (let size = 1; left > 0; size *= 2) {
    bundles.push(Math.min(size, left));
    left -= size;
  }
  return bundles;
}

function withBundle(
  choice: PackChoice,
  {
    pack,
    position,
    bundle,
  }: { readonly pack: CountedPack; readonly position: number; readonly bundle: number },
): PackChoice {
  return {
    grams: choice.grams + pack.grams * bundle,
    minorUnits: choice.minorUnits + pack.minorUnits * bundle,
    packCount: choice.packCount + bundle,
    counts: choice.counts.with(position, (choice.counts[position] ?? 0) + bundle),
  };
}

function capped(choice: PackChoice, enoughGrams: number): PackChoice {
  return choice.grams <= enoughGrams ? choice : { ...choice, grams: enoughGrams };
}

/** From the heaviest down, a choice is kept only when it is better than all that are heavier. */
function bestOnly(choices: readonly PackChoice[]): PackChoice[] {
  const kept: PackChoice[] = [];
  for (const choice of choices.toSorted((a, b) => b.grams - a.grams || compareChoices(a, b))) {
    const best = kept.at(-1);
    if (best === undefined || compareChoices(choice, best) < 0) kept.push(choice);
  }
  return kept.toReversed();
}

function compareChoices(a: PackChoice, b: PackChoice): number {
  const byCount = a.counts
    .map((count, position) => (b.counts[position] ?? 0) - count)
    .find((more) => more !== 0);
  return a.minorUnits - b.minorUnits || a.packCount - b.packCount || (byCount ?? 0);
}
