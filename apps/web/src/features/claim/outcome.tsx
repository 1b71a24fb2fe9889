import { State } from '../../ui/pieces.tsx';
import { useClaimText } from './words.ts';

const KINDS = { open: 'watch', credited: 'well', refused: 'wrong', 'written-off': 'wrong' } as const;

/** How a claim stands, by a mark and a word. */
export function ClaimOutcome({ outcome }: { outcome: keyof typeof KINDS }) {
  const words = useClaimText();
  return <State kind={KINDS[outcome]} word={words.outcomes[outcome]} />;
}
