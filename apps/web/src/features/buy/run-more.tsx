import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BuyPapers } from '../paper/paper-links.tsx';
import type { BuyPage } from './buy-body.ts';
import { CallOff } from './call-off.tsx';
import { LandingPlan } from './landing-plan.tsx';
import { TakeOut } from './take-out.tsx';
import { useRunText } from './words.ts';

const FROM_LANDING = ['ordered', 'landed', 'shared-out', 'closed'];
const FROM_SPLIT = ['landed', 'shared-out', 'closed'];

/** The pages of a buy from its plan to its closing, each at the stages that it is about; a null duty is anybody's. */
const PAGES = [
  {
    to: '/s/$storehouse/buys/$buy/plan',
    name: 'editPlan',
    stages: ['planning', 'gathering'],
    duties: ['coordinator'],
  },
  { to: '/s/$storehouse/buys/$buy/quotes', name: 'toQuotes', stages: null, duties: null },
  {
    to: '/s/$storehouse/buys/$buy/fixing',
    name: 'promised',
    stages: ['fixed'],
    duties: ['coordinator', 'treasurer', 'packing_lead', 'reviewer'],
  },
  {
    to: '/s/$storehouse/buys/$buy/order',
    name: 'theOrder',
    stages: ['fixed', ...FROM_LANDING],
    duties: null,
  },
  { to: '/s/$storehouse/buys/$buy/landing', name: 'theLanding', stages: FROM_LANDING, duties: null },
  { to: '/s/$storehouse/buys/$buy/split', name: 'theSplit', stages: FROM_SPLIT, duties: null },
  {
    to: '/s/$storehouse/buys/$buy/handing-over',
    name: 'handingOver',
    stages: ['shared-out', 'closed'],
    duties: ['coordinator', 'packing_lead', 'treasurer'],
  },
  {
    to: '/s/$storehouse/buys/$buy/closing',
    name: 'theClosing',
    stages: ['shared-out', 'closed'],
    duties: ['coordinator', 'treasurer', 'reviewer'],
  },
  { to: '/s/$storehouse/buys/$buy', name: 'asMember', stages: null, duties: null },
] as const;

/** The rest of a buy, kept out of the way of the next step: its other pages, its papers, and the two ways out of it. */
export function RunMore({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { storehouse, duties: own } = useHouse();
  const isCoordinator = own.includes('coordinator');
  const mayTakeOut = isCoordinator && ['gathering', 'fixed', 'ordered', 'landed'].includes(buy.stage);
  const mayMoveLanding = isCoordinator && ['fixed', 'ordered'].includes(buy.stage);
  const mayCallOff = isCoordinator && ['planning', 'gathering', 'fixed', 'ordered'].includes(buy.stage);
  const pages = PAGES.filter(
    ({ stages, duties }) =>
      (stages === null || stages.some((stage) => stage === buy.stage)) &&
      (duties === null || duties.some((duty) => own.includes(duty))),
  );
  return (
    <section>
      <h2>{words.more}</h2>
      <ul className="list">
        {pages.map(({ to, name }) => (
          <li key={to}>
            <Link to={to} params={{ storehouse, buy: buy.id }}>
              {words[name]}
            </Link>
          </li>
        ))}
      </ul>
      <BuyPapers buy={buy} />
      {mayMoveLanding ? <LandingPlan buy={buy} /> : null}
      {mayTakeOut ? <TakeOut buy={buy} /> : null}
      {mayCallOff ? <CallOff buy={buy} /> : null}
    </section>
  );
}
