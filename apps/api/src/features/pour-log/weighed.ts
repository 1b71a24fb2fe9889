import { netOfGross } from '@sheafbook/packing';
import { z } from 'zod';
import { grams } from '../buy/schema.ts';
import { emptyGrams } from '../container-tare/schema.ts';

/**
 * How the containers of a pour were weighed: their food alone, or full on the scale, less what ten empties of the kind weigh or
 * less what each weighed by itself. What is poured is always the net.
 */
export const weighedHow = z
  .discriminatedUnion('how', [
    z.strictObject({ how: z.literal('net') }),
    z.strictObject({ how: z.literal('tare-of-kind'), grossGrams: z.array(grams), tareGrams: emptyGrams }),
    z.strictObject({
      how: z.literal('own-tare'),
      grossGrams: z.array(grams),
      tareGrams: z.array(emptyGrams),
    }),
  ])
  .default({ how: 'net' });
type WeighedHow = z.infer<typeof weighedHow>;

/** One container's figures off the scale; none where its food was weighed alone. */
export function scaleOf(weighed: WeighedHow, at: number): { grossGrams: number; tareGrams: number } | null {
  if (weighed.how === 'net') return null;
  const { tareGrams } = weighed;
  const own = typeof tareGrams === 'number' ? tareGrams : tareGrams[at];
  const gross = weighed.grossGrams[at];
  return gross === undefined || own === undefined ? null : { grossGrams: gross, tareGrams: own };
}

type Fault = { readonly path: (string | number)[]; readonly message: string };

/** What keeps gross, tare and net from being one weighing; nothing where they add up, container by container. */
export function faultOfScale({
  weighed,
  grams: nets,
}: {
  weighed: WeighedHow;
  grams: number[];
}): Fault | null {
  if (weighed.how === 'net') return null;
  if (weighed.grossGrams.length !== nets.length)
    return { path: ['weighed', 'grossGrams'], message: 'Give what the scale shows of each container.' };
  if (typeof weighed.tareGrams !== 'number' && weighed.tareGrams.length !== nets.length)
    return { path: ['weighed', 'tareGrams'], message: 'Give what each container weighs empty.' };
  for (const [at, netGrams] of nets.entries()) {
    const scale = scaleOf(weighed, at);
    if (!scale) continue;
    const is = netOfGross(scale.grossGrams, scale.tareGrams);
    const ofTare = weighed.how === 'own-tare' ? ['weighed', 'tareGrams', at] : ['weighed', 'grossGrams', at];
    if (is === null) return { path: ofTare, message: 'The empty container weighs as much as the full one.' };
    if (is !== netGrams)
      return {
        path: ['grams', at],
        message: `Gross less tare is ${is} g; the net is given as ${netGrams} g.`,
      };
  }
  return null;
}
