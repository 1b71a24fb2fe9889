import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import type { Scale } from './queries.ts';
import { useScaleText } from './words.ts';

const KINDS = { true: 'well', off: 'wrong', 'check-is-old': 'watch', 'never-checked': 'watch' } as const;

/** One scale with what its last check says of it, and the way to the next. */
export function Standing({ scale, isNamed = true }: { scale: Scale; isNamed?: boolean }) {
  const t = useScaleText();
  const { storehouse, format } = useHouse();
  const { verdict, offByGrams, checkedOn, daysSince, itemId } = scale;
  const day = checkedOn === null ? '' : format.day(checkedOn);
  return (
    <>
      {isNamed ? (
        <>
          <Link to="/s/$storehouse/equipment/$item" params={{ storehouse, item: itemId }}>
            {t.name(scale.itemName, scale.unitNo)}
          </Link>{' '}
        </>
      ) : null}
      <State kind={KINDS[verdict]} word={t.verdicts[verdict]} />{' '}
      {t.says[verdict](offByGrams ?? 0, day, daysSince ?? 0)}
    </>
  );
}
