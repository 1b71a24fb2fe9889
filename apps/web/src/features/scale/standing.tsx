import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { sayStep } from './degrees.ts';
import type { Scale, Thermometer } from './queries.ts';
import { useScaleText } from './words.ts';

const KINDS = { true: 'well', off: 'wrong', 'check-is-old': 'watch', 'never-checked': 'watch' } as const;

/** One scale with what its last check says of it, and the way to the next. */
export function Standing({ scale, isNamed = true }: { scale: Scale; isNamed?: boolean }) {
  const t = useScaleText();
  const { format } = useHouse();
  const { verdict, offByGrams, checkedOn, daysSince } = scale;
  const day = checkedOn === null ? '' : format.day(checkedOn);
  return (
    <Said piece={scale} isNamed={isNamed} says={t.says[verdict](offByGrams ?? 0, day, daysSince ?? 0)} />
  );
}

/** The same of one thermometer, in its reader's degrees. */
export function ThermometerStanding({
  thermometer,
  isNamed = true,
}: {
  thermometer: Thermometer;
  isNamed?: boolean;
}) {
  const t = useScaleText();
  const { format } = useHouse();
  const { verdict, offByTenths, checkedOn, daysSince } = thermometer;
  const day = checkedOn === null ? '' : format.day(checkedOn);
  const off = offByTenths ?? 0;
  const says = t.thermometer.says[verdict](
    { degrees: sayStep(Math.abs(off), format), isHigh: off > 0, isExact: off === 0 },
    day,
    daysSince ?? 0,
  );
  return <Said piece={thermometer} isNamed={isNamed} says={says} />;
}

type Piece = Pick<Scale, 'itemId' | 'itemName' | 'unitNo' | 'verdict'>;

function Said({ piece, isNamed, says }: { piece: Piece; isNamed: boolean; says: string }) {
  const t = useScaleText();
  const { storehouse } = useHouse();
  return (
    <>
      {isNamed ? (
        <>
          <Link to="/s/$storehouse/equipment/$item" params={{ storehouse, item: piece.itemId }}>
            {t.name(piece.itemName, piece.unitNo)}
          </Link>{' '}
        </>
      ) : null}
      <State kind={KINDS[piece.verdict]} word={t.verdicts[piece.verdict]} /> {says}
    </>
  );
}
