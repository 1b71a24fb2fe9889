import { balanceOf } from '../balance.ts';
import { mayMove } from '../buy-stages.ts';
import type {
  AuditBuy,
  AuditCostLine,
  AuditFinding,
  AuditInput,
  AuditPledge,
  AuditSplit,
} from './audit-rows.ts';
import { finding } from './finding.ts';

/** The checks of buys, their costs and their splits: invariants 3, 5, 6, 7, 13, 14 and 15. Units: as told. Errors: none. */
export function buyFindings(input: AuditInput): AuditFinding[] {
  return [
    clearedFinding(input),
    costLinesFinding(input),
    splitsFinding(input),
    rerunsFinding(input),
    stagesFinding(input),
    pledgesFinding(input),
    fillsFinding(input),
  ];
}

function clearedFinding(input: AuditInput): AuditFinding {
  const ended = new Set(
    input.buys.filter((buy) => buy.stage === 'closed' || buy.stage === 'called-off').map((buy) => buy.buyId),
  );
  const open = input.accounts.filter(
    (account) =>
      (account.kind === 'buy_clearing' || account.kind === 'buy_deposit') &&
      account.causeId !== null &&
      ended.has(account.causeId) &&
      balanceOf(account) !== 0,
  );
  return finding({
    number: 3,
    key: 'ended-buys',
    invariant: 'Clearing and deposits of every closed or called-off buy are zero',
    holds: open.length === 0,
    counts: [
      [ended.size, 'buys ended'],
      [open.length, 'accounts not at zero'],
    ],
  });
}

function costLinesFinding(input: AuditInput): AuditFinding {
  const wrong = input.costLines.filter(
    (line) => !isSharedByLargestRemainder(line) && !isSharedByLargestRemainder(withWhatCameBefore(line)),
  );
  return finding({
    number: 5,
    key: 'cost-lines',
    invariant: 'The shares of every cost line add up to it, each within one of its exact part',
    holds: wrong.length === 0,
    counts: [
      [input.costLines.length, 'cost lines'],
      [wrong.length, 'wrong'],
    ],
  });
}

/** A cost that was shared anew is judged by what it comes to for each; the line itself holds the differences alone. */
function withWhatCameBefore(line: AuditCostLine): AuditCostLine {
  return {
    ...line,
    totalMinorUnits: line.totalMinorUnits + (line.chargedBeforeMinorUnits ?? 0),
    shares: line.shares.map(({ weight, amountMinorUnits, chargedBeforeMinorUnits = 0 }) => ({
      weight,
      amountMinorUnits: amountMinorUnits + chargedBeforeMinorUnits,
    })),
  };
}

function isSharedByLargestRemainder({ totalMinorUnits, shares }: AuditCostLine): boolean {
  const total = BigInt(totalMinorUnits);
  const weightSum = shares.reduce((sum, share) => sum + share.weight, 0n);
  const sharedSum = shares.reduce((sum, share) => sum + BigInt(share.amountMinorUnits), 0n);
  const areNear = shares.every(({ weight, amountMinorUnits }) => {
    const off = BigInt(amountMinorUnits) * weightSum - total * weight;
    return off === 0n || (-weightSum < off && off < weightSum);
  });
  return sharedSum === total && areNear;
}

function splitsFinding(input: AuditInput): AuditFinding {
  const wrong = input.splits.filter((split) => !isSplitWithinClaims(split));
  return finding({
    number: 6,
    key: 'splits',
    invariant: 'Every split awards nobody more than the claim, and all that there is to award',
    holds: wrong.length === 0,
    counts: [
      [input.splits.length, 'splits'],
      [wrong.length, 'wrong'],
    ],
  });
}

function isSplitWithinClaims({ availableGrams, awards }: AuditSplit): boolean {
  const claimedGrams = awards.reduce((sum, award) => sum + award.claimGrams, 0);
  const awardedGrams = awards.reduce((sum, award) => sum + award.awardGrams, 0);
  const areWithin = awards.every((award) => award.awardGrams >= 0 && award.awardGrams <= award.claimGrams);
  return areWithin && awardedGrams === Math.min(availableGrams, claimedGrams);
}

function rerunsFinding(input: AuditInput): AuditFinding {
  const changed = input.reruns.filter((rerun) => !rerun.isSame);
  return finding({
    number: 7,
    key: 'answers-again',
    invariant: 'Computing a frozen answer again from its frozen inputs gives the same bytes',
    holds: changed.length === 0,
    counts: [
      [input.reruns.length, 'answers computed again'],
      [changed.length, 'changed'],
    ],
  });
}

function stagesFinding(input: AuditInput): AuditFinding {
  const wrong = input.buys.filter((buy) => !isWalkedAlongEdges(buy));
  return finding({
    number: 13,
    key: 'stages',
    invariant: 'Every buy came to its stage by permitted moves alone',
    holds: wrong.length === 0,
    counts: [
      [input.buys.length, 'buys'],
      [input.buys.reduce((sum, buy) => sum + buy.moves.length, 0), 'moves'],
      [wrong.length, 'buys off the path'],
    ],
  });
}

function isWalkedAlongEdges({ stage, moves }: AuditBuy): boolean {
  let at: AuditBuy['stage'] = 'planning';
  for (const { from, to } of moves) {
    if (from !== at || !mayMove(from, to)) return false;
    at = to;
  }
  return at === stage;
}

function pledgesFinding(input: AuditInput): AuditFinding {
  const wrong = input.pledges.filter((pledge) => !isPledgeKept(pledge));
  return finding({
    number: 14,
    key: 'pledges',
    invariant:
      'Every pledge is in order, and its allotment is nothing or within it, in its steps and its price',
    holds: wrong.length === 0,
    counts: [
      [input.pledges.length, 'pledges'],
      [wrong.length, 'wrong'],
    ],
  });
}

function isPledgeKept({ least, wanted, most, step, allotted, isWithinCeiling }: AuditPledge): boolean {
  const isInOrder = least <= wanted && wanted <= most;
  if (allotted === null || allotted === 0) return isInOrder;
  const isWithin = least <= allotted && allotted <= most;
  const isInSteps = step > 0 && allotted % step === 0;
  return isInOrder && isWithin && isInSteps && isWithinCeiling !== false;
}

function fillsFinding(input: AuditInput): AuditFinding {
  const worse = input.fills.filter((fill) => !fill.isBest);
  return finding({
    number: 15,
    key: 'fills',
    invariant: 'Every fixed fill has the least key that can be had',
    holds: worse.length === 0,
    counts: [
      [input.fills.length, 'fills'],
      [worse.length, 'not the best'],
    ],
  });
}
