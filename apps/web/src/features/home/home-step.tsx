import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { buyQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { NextStep, State } from '../../ui/pieces.tsx';
import { LooseLink } from '../buy/loose-link.tsx';
import { pageFor } from '../buy/run-links.ts';
import type { NextItem } from '../buy/run-queries.ts';
import { useCoverageText } from './words.ts';

const SHOWN = 6;

/** What needs me: the most urgent as the page's one step, the others under it. */
export function HomeStep({ items, hasEaters }: { items: readonly NextItem[]; hasEaters: boolean }) {
  const t = useText();
  const words = useCoverageText();
  const { storehouse } = useHouse();
  const [first, ...others] = items;
  const after = hasEaters ? others : items;
  return (
    <>
      {hasEaters ? null : (
        <NextStep>
          <p>{t.stepEaters}</p>
          <Link className="btn go" to="/s/$storehouse/welcome" params={{ storehouse }}>
            {t.addEaters}
          </Link>
        </NextStep>
      )}
      {hasEaters && first ? <FirstStep item={first} /> : null}
      {hasEaters && !first ? <p className="soft">{t.nothingWaits}</p> : null}
      {after.length === 0 ? null : (
        <section>
          <h2>{words.thenTitle}</h2>
          <ul className="list">
            {after.slice(0, SHOWN).map((item) => (
              <li key={`${item.kind} ${item.path} ${item.words}`}>
                <StepLink item={item} />
              </li>
            ))}
          </ul>
          {after.length > SHOWN ? <p className="soft">{words.moreWait(after.length - SHOWN)}</p> : null}
        </section>
      )}
    </>
  );
}

function FirstStep({ item }: { item: NextItem }) {
  const words = useCoverageText();
  const say = useStepWords();
  const go = useStepAddress();
  const to = go(item);
  const label =
    {
      'pledge-closing': words.goPledge,
      'deposit-due': words.goDeposit,
      'food-waiting': words.goFetch,
      'pick-up': words.goFetch,
      'balance-due': words.goStatement,
    }[item.kind as string] ?? words.goDo;
  return (
    <NextStep>
      <p>
        <b>{say(item)}</b>
        {item.isOverdue ? (
          <>
            {' '}
            <State kind="wrong" word={words.overdue} />
          </>
        ) : null}
      </p>
      {item.buyId !== null && ['pick-up', 'food-waiting'].includes(item.kind) ? (
        <Where buy={item.buyId} />
      ) : null}
      {to === null ? null : (
        <LooseLink className="btn go" to={to}>
          {label}
        </LooseLink>
      )}
    </NextStep>
  );
}

/** The book keeps where a buy lands, and food is fetched there. */
function Where({ buy }: { buy: string }) {
  const words = useCoverageText();
  const { storehouse } = useHouse();
  const { data } = useQuery(buyQuery({ storehouse, buy }));
  return data?.landingPlace ? <p>{words.where(data.landingPlace)}</p> : null;
}

function StepLink({ item }: { item: NextItem }) {
  const words = useCoverageText();
  const { format } = useHouse();
  const say = useStepWords();
  const go = useStepAddress();
  const due = item.dueAt ? format.instant(item.dueAt) : item.dueOn ? format.day(item.dueOn) : null;
  const isOwn = item.kind in words.steps || item.kind === 'pick-up';
  const text = (
    <>
      <span>
        {say(item)}
        {due === null || isOwn ? null : <span className="soft">{` ${words.byDay(due)}`}</span>}
      </span>
      {item.isOverdue ? <State kind="wrong" word={words.overdue} /> : null}
    </>
  );
  const to = go(item);
  return to === null ? <p>{text}</p> : <LooseLink to={to}>{text}</LooseLink>;
}

/** What waits in one sentence; what a duty has to do comes in the server's words. */
function useStepWords(): (item: NextItem) => string {
  const words = useCoverageText();
  const { format } = useHouse();
  return (item) => {
    const due = item.dueAt ? format.instant(item.dueAt) : item.dueOn ? format.day(item.dueOn) : '';
    const buy = item.buyName ?? '';
    if (item.kind === 'pick-up') return words.fetchAt(buy, due, item.endsAt ? format.hour(item.endsAt) : '');
    const own = words.steps[item.kind as keyof typeof words.steps];
    const money = `${format.money(item.minorUnits ?? 0)} ${format.currency}`;
    return own ? own(buy, due, money) : format.sentence(item.words);
  };
}

function useStepAddress(): (item: NextItem) => string | null {
  const { storehouse, duties } = useHouse();
  return (item) => {
    const root = `/s/${storehouse}`;
    if (item.kind === 'balance-due') return `${root}/statement`;
    if (/^packing-/.test(item.kind)) return pageFor(item.path, { isTreasurer: false });
    if (/^(loan|equipment)-/.test(item.kind)) return `${root}/equipment`;
    const isOwn = ['pledge-closing', 'deposit-due', 'food-waiting', 'pick-up'].includes(item.kind);
    if (isOwn) return item.buyId === null ? null : `${root}/buys/${item.buyId}`;
    return pageFor(item.path, { isTreasurer: duties.includes('treasurer') });
  };
}
