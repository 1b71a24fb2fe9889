export type Stair = {
  readonly part: string;
  readonly name: string | null;
  readonly amountMinorUnits: number;
  readonly balanceMinorUnits: number;
};

export type DrawnStair = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Where the next step begins: the balance after this one. */
  readonly nextY: number;
  readonly tone: 'up' | 'down' | 'credit';
};

export type Drawing = {
  readonly steps: readonly DrawnStair[];
  readonly groundY: number;
  readonly stepWidth: number;
};

/**
 * The account as stairs on one scale: each step begins where the last one left the account, and its height is its amount.
 * Pixels; the ground is 0.00. A balance below nothing goes below the ground.
 */
export function drawStairs(
  stairs: readonly Stair[],
  { width, height, gap }: { width: number; height: number; gap: number },
): Drawing {
  const balances = [0, ...stairs.map(({ balanceMinorUnits }) => balanceMinorUnits)];
  const [most, least] = [Math.max(...balances), Math.min(...balances)];
  const scale = most === least ? 0 : height / (most - least);
  const yOf = (minorUnits: number) => (most - minorUnits) * scale;
  const stepWidth = width / (stairs.length + 1); // the last place is the balance's own
  const steps = stairs.map(({ part, amountMinorUnits, balanceMinorUnits }, at) => {
    const before = balances[at] ?? 0;
    const top = Math.max(before, balanceMinorUnits);
    const isCredit = part === 'credited';
    return {
      x: at * stepWidth,
      y: yOf(top),
      width: stepWidth - gap,
      height: Math.max(1, Math.abs(amountMinorUnits) * scale),
      nextY: yOf(balanceMinorUnits),
      tone: isCredit ? ('credit' as const) : amountMinorUnits > 0 ? ('up' as const) : ('down' as const),
    };
  });
  return { steps, groundY: yOf(0), stepWidth };
}
