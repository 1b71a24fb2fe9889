import type { presentEntry } from '../entry/use-cases.ts';
import type { TracedBag, TracedContainer, TracedStep } from './queries.ts';

export type Trace =
  | { readonly kind: 'bag'; readonly code: string; readonly bag: TracedBag; readonly steps: TracedStep[] }
  | {
      readonly kind: 'container';
      readonly code: string;
      readonly container: TracedContainer;
      readonly steps: TracedStep[];
    }
  /** Null for whoever may not read the journal: the sample is the same for all, what it shows is not. */
  | { readonly kind: 'entry'; readonly code: string; readonly entry: ReturnType<typeof presentEntry> | null };

export type Drawn = { readonly seed: string; readonly candidates: number; readonly traces: readonly Trace[] };
