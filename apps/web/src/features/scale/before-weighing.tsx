import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { scalesQuery } from './queries.ts';
import { useScaleText } from './words.ts';

/** Before food is weighed out: a word where no scale of the group is known to be true. */
export function BeforeWeighing() {
  const t = useScaleText();
  const { storehouse } = useHouse();
  const { data } = useQuery(scalesQuery({ storehouse }));
  if (!data || data.scales.some(({ verdict }) => verdict === 'true')) return null;
  return (
    <p className="said watch-said no-print" role="note">
      {t.noneGood}{' '}
      <Link to="/s/$storehouse/equipment" params={{ storehouse }}>
        {t.toEquipment}
      </Link>
    </p>
  );
}
