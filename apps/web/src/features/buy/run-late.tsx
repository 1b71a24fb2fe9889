import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import type { BuyPage } from './buy-body.ts';
import { depositsQuery, householdPledgesQuery, householdsQuery } from './run-queries.ts';
import { useRunText } from './words.ts';

/** Who has not pledged while the buy gathers, and whose deposit is missing once it is fixed. */
export function RunLate({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { duties } = useHouse();
  const seesDeposits = duties.some((duty) => ['coordinator', 'treasurer', 'reviewer'].includes(duty));
  const isFixed = buy.stage === 'fixed' && seesDeposits;
  if (buy.stage !== 'gathering' && !isFixed) return null;
  return (
    <section className="stack">
      <h2>{words.late}</h2>
      {isFixed ? <Deposits buy={buy.id} /> : <NotPledged buy={buy.id} />}
    </section>
  );
}

function NotPledged({ buy }: { buy: string }) {
  const words = useRunText();
  const { storehouse } = useHouse();
  const pledges = useQuery(householdPledgesQuery({ storehouse, buy }));
  const households = useQuery(householdsQuery({ storehouse }));
  return (
    <Loaded reading={joined(pledges, households)}>
      {([all, known]) => {
        const inIt = new Set(all.map(({ householdId }) => householdId));
        const missing = known.filter(({ id, leftOn }) => leftOn === null && !inIt.has(id));
        return missing.length === 0 ? (
          <State kind="well" word={words.allPledged} />
        ) : (
          <p>
            {words.notPledged(missing.length)}
            {missing.map(({ name }) => name).join(', ')}.
          </p>
        );
      }}
    </Loaded>
  );
}

function Deposits({ buy }: { buy: string }) {
  const words = useRunText();
  const { storehouse, duties } = useHouse();
  const deposits = useQuery(depositsQuery({ storehouse, buy }));
  return (
    <Loaded reading={deposits}>
      {({ deposits: rows }) => {
        const missing = rows.filter(({ isSettled }) => !isSettled);
        return (
          <>
            {missing.length === 0 ? (
              <State kind="well" word={words.allDeposits} />
            ) : (
              <p>
                {words.depositsMissing(missing.length)}
                {missing.map(({ household }) => household).join(', ')}.
              </p>
            )}
            {duties.includes('treasurer') ? null : <p className="soft">{words.amountsHidden}</p>}
          </>
        );
      }}
    </Loaded>
  );
}
