import { useText } from '../../text/taste.ts';
import { State } from '../../ui/pieces.tsx';

const KINDS: Readonly<Record<string, 'well' | 'watch' | 'wrong'>> = {
  gathering: 'watch',
  closed: 'well',
  'called-off': 'wrong',
};

/** Where a buy stands, as a mark and a word. */
export function StageState({ stage }: { stage: string }) {
  const t = useText();
  return <State kind={KINDS[stage] ?? 'well'} word={t.stages[stage] ?? stage} />;
}
