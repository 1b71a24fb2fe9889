import { useHouse } from '../../ui/house.ts';
import { BuyPapers } from '../paper/paper-links.tsx';
import type { BuyPage } from './buy-body.ts';
import { CallOff } from './call-off.tsx';
import { LooseLink } from './loose-link.tsx';
import { TakeOut } from './take-out.tsx';
import { isLineAhead } from './tips.ts';
import { useRunText } from './words.ts';

/** The rest of what a coordinator does with a buy, kept out of the way of the next step. */
export function RunMore({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { storehouse } = useHouse();
  const root = `/s/${storehouse}/buys/${buy.id}`;
  const mayTakeOut = ['gathering', 'fixed', 'ordered', 'landed'].includes(buy.stage);
  const mayCallOff = ['planning', 'gathering', 'fixed', 'ordered'].includes(buy.stage);
  const links = [
    ...(isLineAhead(buy.stage) ? [{ to: `${root}/plan`, name: words.editPlan }] : []),
    { to: `${root}/quotes`, name: words.toQuotes },
    ...(buy.stage === 'fixed' ? [{ to: `${root}/fixing`, name: words.promised }] : []),
    ...(buy.stage === 'ordered' || buy.stage === 'landed'
      ? [{ to: `${root}/order`, name: words.theOrder }]
      : []),
    { to: root, name: words.asMember },
  ];
  return (
    <section>
      <h2>{words.more}</h2>
      <ul className="list">
        {links.map(({ to, name }) => (
          <li key={to}>
            <LooseLink to={to}>{name}</LooseLink>
          </li>
        ))}
      </ul>
      <BuyPapers buy={buy} />
      {mayTakeOut ? <TakeOut buy={buy} /> : null}
      {mayCallOff ? <CallOff buy={buy} /> : null}
    </section>
  );
}
