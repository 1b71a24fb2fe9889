import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { buyQuery, pickUpsQuery } from '../../api/queries.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import type { BuyPage } from '../buy/buy-body.ts';
import { householdsQuery } from '../buy/run-queries.ts';
import { type Fetcher, fetchersOf } from './fetchers.ts';
import './handing-over.css';
import { HouseholdAtTheDoor } from './household-at-the-door.tsx';
import { uncollectedQuery } from './queries.ts';
import { useHandingText } from './words.ts';

const HANDERS = ['coordinator', 'packing_lead'];

/** The door on the day of fetching: who has still to come, and a signature for whoever stands there. */
export function HandingOver() {
  const t = useHandingText();
  const { buy } = useParams({ from: '/s/$storehouse/buys/$buy/handing-over' });
  const { storehouse } = useHouse();
  const facts = useQuery(buyQuery({ storehouse, buy }));
  useTitle(t.handingOver);
  return (
    <>
      <Link className="who no-print" to="/s/$storehouse/buys/$buy" params={{ storehouse, buy }}>
        <BackIcon />
        {facts.data?.name ?? t.toBuy}
      </Link>
      <Loaded isPage reading={facts}>
        {(page) => <Door page={page} />}
      </Loaded>
    </>
  );
}

function Door({ page }: { page: BuyPage }) {
  const { storehouse, duties } = useHouse();
  const param = { storehouse, buy: page.id };
  const isOpen = page.stage === 'shared-out' || page.stage === 'closed';
  const mayHand = HANDERS.some((duty) => duties.includes(duty));
  const pickUps = useQuery(pickUpsQuery(param));
  const households = useQuery(householdsQuery({ storehouse }));
  const uncollected = useQuery(uncollectedQuery(param, isOpen && mayHand));
  return (
    <Loaded isPage reading={joined(pickUps, joined(households, uncollected))}>
      {([{ pickUps: found, waiting }, [all, left]]) => (
        <Fetchers
          page={page}
          isOpen={isOpen && mayHand}
          fetchers={fetchersOf({ waiting, pickUps: found, households: all, uncollected: left })}
        />
      )}
    </Loaded>
  );
}

type FetchersProps = { page: BuyPage; fetchers: readonly Fetcher[]; isOpen: boolean };

function Fetchers({ page, fetchers, isOpen }: FetchersProps) {
  const t = useHandingText();
  const [wanted, setWanted] = useState('');
  const still = fetchers.filter(({ waiting }) => waiting.length > 0).length;
  const shown = fetchers.filter(({ name }) => name.toLowerCase().includes(wanted.trim().toLowerCase()));
  return (
    <>
      <h1>
        {page.stage === 'shared-out' || page.stage === 'closed'
          ? t.stillToFetch(still, fetchers.length)
          : t.notYet}
      </h1>
      {fetchers.length === 0 ? null : (
        <Field
          label={t.findHousehold}
          type="search"
          value={wanted}
          onChange={(event) => setWanted(event.target.value)}
        />
      )}
      {shown.length === 0 && fetchers.length > 0 ? <p role="status">{t.nobodyFound}</p> : null}
      <ul className="list">
        {shown.map((fetcher) => (
          <li key={fetcher.householdId}>
            <HouseholdAtTheDoor page={page} fetcher={fetcher} isOpen={isOpen} />
          </li>
        ))}
      </ul>
    </>
  );
}
