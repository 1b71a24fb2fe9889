import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { lidsQuery } from './queries.ts';
import { useLidText } from './words.ts';

/** On a container's own page: what its lid asks for, where it is a jar that was closed lately. */
export function LidOfJar({ container }: { container: string }) {
  const t = useLidText();
  const { storehouse, format } = useHouse();
  const lid = useQuery(lidsQuery({ storehouse }, 'household')).data?.lids.find(({ id }) => id === container);
  if (!lid || (lid.state !== 'due' && lid.state !== 'loose' && lid.state !== 'early')) return null;
  const says = lid.state === 'early' ? t.ofJar.early(format.instant(lid.dueAt)) : t.ofJar[lid.state];
  return (
    <p className={lid.state === 'early' ? 'said' : 'said watch-said'}>
      {says}{' '}
      <Link to="/s/$storehouse/shelf/lids" params={{ storehouse }}>
        {t.toLids}
      </Link>
    </p>
  );
}
