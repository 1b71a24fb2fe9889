import { Link } from '@tanstack/react-router';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';

type OpenBuy = { id: string; name: string; stage: string; gatheringClosesAt: string };

/** The one thing to do next: who eats, then a buy that still gathers, then what is owed. */
export function HomeStep({
  buys,
  owedMinorUnits,
  hasEaters,
}: {
  buys: readonly OpenBuy[];
  owedMinorUnits: number;
  hasEaters: boolean;
}) {
  const t = useText();
  const { storehouse, format } = useHouse();
  const params = { storehouse };
  if (!hasEaters)
    return (
      <NextStep>
        <p>{t.stepEaters}</p>
        <Link className="btn go" to="/s/$storehouse/welcome" params={params}>
          {t.addEaters}
        </Link>
      </NextStep>
    );
  const [buy] = buys
    .filter(({ stage }) => stage === 'gathering')
    .toSorted((a, b) => a.gatheringClosesAt.localeCompare(b.gatheringClosesAt));
  if (buy)
    return (
      <NextStep>
        <p>
          <b>{t.buyCloses(buy.name, format.instant(buy.gatheringClosesAt))}</b> {t.buyClosesWords}
        </p>
        <Link className="btn go" to="/s/$storehouse/buys/$buy" params={{ storehouse, buy: buy.id }}>
          {t.seeBuy}
        </Link>
      </NextStep>
    );
  if (owedMinorUnits > 0)
    return (
      <NextStep>
        <p>{t.stepOwed(format.money(owedMinorUnits))}</p>
        <Link className="btn go" to="/s/$storehouse/statement" params={params}>
          {t.seeStatement}
        </Link>
      </NextStep>
    );
  return <p className="soft">{t.nothingWaits}</p>;
}
