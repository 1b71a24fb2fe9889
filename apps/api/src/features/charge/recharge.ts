import { type ChargedLine, type ChargedShare, creditByOriginalWeights } from '@sheafbook/sharing';
import { sumOf } from '@sheafbook/units';

/**
 * What has to be charged or paid back so that the charges meet the bills again. Where more of the goods has been
 * split since (a released bag, a later delivery), every line is shared anew over all grams, as if it had all landed at
 * once, and each owner gets the difference; else a line's difference goes by the weights that it was charged by.
 */
export function differences(target: readonly ChargedLine[], charged: readonly ChargedLine[]): ChargedLine[] {
  const isSplitFurther = target.some((line) => isGoods(line) && !hasSameWeights(line, find(charged, line)));
  const gone = charged.filter((line) => !find(target, line));
  const wanted = [...target, ...gone.map((line) => emptied(line))];
  return wanted
    .map((line) => difference(line, find(charged, line), isSplitFurther))
    .filter((line) => line.shares.some((share) => share.minorUnits !== 0));
}

const isGoods = (line: ChargedLine): boolean => line.costLineId.startsWith('goods:');

const find = (lines: readonly ChargedLine[], { costLineId }: ChargedLine): ChargedLine | undefined =>
  lines.find((line) => line.costLineId === costLineId);

const weightsText = (line: ChargedLine): string =>
  JSON.stringify(
    line.shares
      .filter((share) => share.weight !== 0)
      .map((share) => [share.ownerId, share.weight])
      .toSorted(),
  );

/** A goods line that was never charged and weighs nothing is no news either. */
function hasSameWeights(line: ChargedLine, before: ChargedLine | undefined): boolean {
  return before ? weightsText(line) === weightsText(before) : sumOf(line.shares.map((s) => s.weight)) === 0;
}

const emptied = (line: ChargedLine): ChargedLine => ({
  ...line,
  minorUnits: 0,
  shares: line.shares.map((share) => ({ ...share, minorUnits: 0 })),
});

function difference(
  line: ChargedLine,
  before: ChargedLine | undefined,
  isSplitFurther: boolean,
): ChargedLine {
  const minorUnits = line.minorUnits - (before?.minorUnits ?? 0);
  if (before && !isSplitFurther) {
    if (minorUnits === 0) return emptied(before);
    const credits = new Map(
      creditByOriginalWeights(minorUnits, before).map((credit) => [credit.ownerId, credit.minorUnits]),
    );
    const shares = before.shares.map((share) => ({
      ...share,
      minorUnits: credits.get(share.ownerId) ?? 0,
      gotSpareUnit: false,
    }));
    return { ...before, minorUnits, shares };
  }
  const paid = new Map(before?.shares.map((share) => [share.ownerId, share.minorUnits]));
  const left = (before?.shares ?? []).filter(
    (share) => !line.shares.some((known) => known.ownerId === share.ownerId),
  );
  const shares = [...line.shares, ...left.map((share) => ({ ...share, minorUnits: 0, weight: 0 }))];
  return {
    ...line,
    minorUnits,
    shares: shares.map((share) => ({
      ...share,
      minorUnits: share.minorUnits - (paid.get(share.ownerId) ?? 0),
    })),
  };
}

/** All that was charged so far, one line a cost line: amounts added up, weights as they were last. */
export function mergeCharges(
  lines: readonly {
    readonly costLine: string;
    readonly minorUnits: number;
    readonly shares: readonly ChargedShare[];
  }[],
): ChargedLine[] {
  const merged = new Map<string, ChargedLine>();
  for (const { costLine: costLineId, minorUnits, shares } of lines) {
    if (costLineId.startsWith('late:')) continue;
    const before = merged.get(costLineId);
    const paid = new Map(before?.shares.map((share) => [share.ownerId, share.minorUnits]));
    const added = shares.map((share) => ({
      ...share,
      minorUnits: share.minorUnits + (paid.get(share.ownerId) ?? 0),
    }));
    merged.set(costLineId, { costLineId, minorUnits: minorUnits + (before?.minorUnits ?? 0), shares: added });
  }
  return [...merged.values()];
}
