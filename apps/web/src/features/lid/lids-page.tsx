import { useSearch } from '@tanstack/react-router';
import { useTitle } from '../../ui/use-title.ts';
import { OfWhose } from '../place/of-whose.tsx';
import { LidsOf } from './lids-of.tsx';
import { useLidText } from './words.ts';

/** The lids of a household's own jars, or for whoever packs of all that stand in the store. */
export function LidsPage() {
  const t = useLidText();
  const { of: first } = useSearch({ from: '/s/$storehouse/shelf/lids' });
  useTitle(t.title);
  return (
    <OfWhose
      back={{ to: '/s/$storehouse/shelf', name: t.shelf }}
      label={t.whose}
      owners={t.owners}
      first={first}
    >
      {(of) => <LidsOf key={of} of={of} isPage />}
    </OfWhose>
  );
}
