import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { useLandingText } from './words.ts';

const STAGES = ['ordered', 'landed', 'shared-out', 'closed'];
const READERS = ['coordinator', 'treasurer', 'reviewer'];

/** The pages of a buy from its lorry to its last cent, for whoever has a duty in it. */
export function SecondHalf({ buy, stage }: { buy: string; stage: string }) {
  const t = useLandingText();
  const { storehouse, duties } = useHouse();
  const params = { storehouse, buy };
  const isOrdered = STAGES.includes(stage);
  const hasLanded = isOrdered && stage !== 'ordered';
  if (!isOrdered || duties.length === 0) return null;
  return (
    <section>
      <h2>{t.secondHalf}</h2>
      <ul className="list">
        <li>
          <Link to="/s/$storehouse/buys/$buy/landing" params={params}>
            {t.pages.landing}
          </Link>
        </li>
        {hasLanded ? (
          <>
            <li>
              <Link to="/s/$storehouse/buys/$buy/split" params={params}>
                {t.pages.split}
              </Link>
            </li>
            <li>
              <Link to="/s/$storehouse/buys/$buy/handing-over" params={params}>
                {t.pages.handingOver}
              </Link>
            </li>
          </>
        ) : null}
        {hasLanded && READERS.some((duty) => duties.includes(duty)) ? (
          <li>
            <Link to="/s/$storehouse/buys/$buy/closing" params={params}>
              {t.pages.closing}
            </Link>
          </li>
        ) : null}
      </ul>
    </section>
  );
}
