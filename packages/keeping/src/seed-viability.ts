import { assert } from '@sheafbook/units';

/**
 * How long seed stays alive, as an outside comparison for the shape of ageing over warmth and damp. Seed life is no eating
 * life.
 * Units: the constants of one species. Errors: none. Source: Ellis and Roberts 1980; rice KE and CW from a secondary page.
 */
export const RICE_SEED = { ke: 8.668, cw: 5.03, ch: 0.0329, cq: 0.000478 } as const;

/**
 * The days over which the probit of seed that is alive falls by one.
 * Units: per cent wet basis, °C; days out. Errors: AssertionError outside 5 to 25 % or −20 to 90 °C, where it holds.
 * Source: σ = 10^(KE − CW log m − CH t − CQ t²).
 */
export function seedSigmaDays(
  moisturePercent: number,
  celsius: number,
  {
    ke,
    cw,
    ch,
    cq,
  }: { readonly ke: number; readonly cw: number; readonly ch: number; readonly cq: number } = RICE_SEED,
): number {
  assert(moisturePercent >= 5 && moisturePercent <= 25, 'the equation holds from 5 to 25 % moisture');
  assert(celsius >= -20 && celsius <= 90, 'the equation holds from −20 to 90 °C');
  return 10 ** (ke - cw * Math.log10(moisturePercent) - ch * celsius - cq * celsius ** 2);
}
