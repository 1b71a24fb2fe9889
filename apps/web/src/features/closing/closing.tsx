import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { api, askOnce } from '../../api/client.ts';
import { buyQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon, WatchMark, WellMark } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Figures, NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import type { BuyPage } from '../buy/buy-body.ts';
import { ChargeTable } from './charge-table.tsx';
import './closing.css';
import { type Charges, type ClosingBody, chargesQuery, closingQuery } from './queries.ts';
import { useClosingText } from './words.ts';

const ofBuy = api.storehouses[':storehouse'].buys[':buy'];
const READERS = ['coordinator', 'treasurer', 'reviewer'];

/** The end of a buy: exactly what it still lacks, what everyone bears of it, and its account at 0.00. */
export function Closing() {
  const t = useClosingText();
  const { buy } = useParams({ from: '/s/$storehouse/buys/$buy/closing' });
  const { storehouse, duties } = useHouse();
  const facts = useQuery(buyQuery({ storehouse, buy }));
  useTitle(t.closing);
  return (
    <>
      <Link className="who no-print" to="/s/$storehouse/buys/$buy" params={{ storehouse, buy }}>
        <BackIcon />
        {facts.data?.name ?? t.toBuy}
      </Link>
      {READERS.some((duty) => duties.includes(duty)) ? (
        <Loaded isPage reading={facts}>
          {(page) => <Account page={page} />}
        </Loaded>
      ) : (
        <>
          <h1>{t.closing}</h1>
          <p>{t.notForYou}</p>
        </>
      )}
    </>
  );
}

function Account({ page }: { page: BuyPage }) {
  const { storehouse } = useHouse();
  const param = { storehouse, buy: page.id };
  const closing = useQuery(closingQuery(param));
  const charges = useQuery(chargesQuery(param));
  return (
    <Loaded isPage reading={joined(closing, charges)}>
      {([state, borne]) => <Sheet page={page} state={state} charges={borne} />}
    </Loaded>
  );
}

type SheetProps = { page: BuyPage; state: ClosingBody; charges: Charges };

function Sheet({ page, state, charges }: SheetProps) {
  const t = useClosingText();
  const { format, storehouse, duties } = useHouse();
  const { stage, missing, clearingMinorUnits, unassignedGrams } = state;
  const isBehind = missing.some(({ code }) => code === 'charges-behind');
  return (
    <>
      <h1>
        {stage === 'closed'
          ? t.isClosed(format.money(clearingMinorUnits))
          : stage !== 'shared-out'
            ? t.tooEarly
            : state.isReady
              ? t.isReady(format.money(clearingMinorUnits))
              : t.lacks(missing.length)}
      </h1>
      {stage === 'shared-out' && isBehind ? <Recharge buy={page.id} /> : null}
      {stage === 'shared-out' && state.isReady ? <Close buy={page.id} /> : null}
      {missing.length === 0 ? null : (
        <ul className="list lacking" aria-label={t.whatLacks}>
          {missing.map(({ code, count = 1, words }) => (
            <li key={code}>
              <span className="watch">
                <WatchMark />
              </span>
              <span>
                {words} {count > 1 ? <b>{t.times(count)}</b> : null} <Where code={code} buy={page.id} />
              </span>
            </li>
          ))}
        </ul>
      )}
      <Figures
        rows={[
          { name: t.clearing, value: format.money(clearingMinorUnits) },
          { name: t.unassigned, value: format.count(unassignedGrams), unit: 'g' },
          { name: t.charged, value: format.money(charges.chargedMinorUnits) },
          { name: t.commonStock, value: format.money(charges.commonStockMinorUnits) },
        ]}
      />
      {charges.lines.length === 0 ? (
        <p>{t.noCharges}</p>
      ) : (
        <section className="stack">
          <h2>{t.whoBears}</h2>
          <ChargeTable page={page} charges={charges} />
          <p className="soft">{t.tieBreak}</p>
        </section>
      )}
      {stage === 'closed' ? (
        <p className="well row">
          <WellMark /> {t.closedWords}
        </p>
      ) : null}
      <div className="actions no-print">
        <Link className="btn" to="/s/$storehouse/buys/$buy/split" params={{ storehouse, buy: page.id }}>
          {t.seeSplits}
        </Link>
        {DESK_READERS.some((duty) => duties.includes(duty)) ? (
          <Link className="btn" to="/s/$storehouse/books/clearing/$buy" params={{ storehouse, buy: page.id }}>
            {t.seeAccount}
          </Link>
        ) : null}
      </div>
    </>
  );
}

/** Where each missing thing is put right. */
function Where({ code, buy }: { code: string; buy: string }) {
  const t = useClosingText();
  const { storehouse, duties } = useHouse();
  const params = { storehouse, buy };
  if (code === 'mass-unassigned')
    return (
      <>
        <Link to="/s/$storehouse/buys/$buy/split" params={params}>
          {t.toSplit}
        </Link>{' '}
        <Link to="/s/$storehouse/buys/$buy/landing" params={params}>
          {t.toBags}
        </Link>
      </>
    );
  const desk = DESK[code];
  if (!desk || !DESK_READERS.some((duty) => duties.includes(duty))) return null;
  return (
    <Link to={desk.to} params={params}>
      {t[desk.name]}
    </Link>
  );
}

const DESK_READERS = ['treasurer', 'reviewer'];
/** The pages of the treasurer's desk, by what a buy lacks. */
const DESK: Readonly<
  Record<string, { to: DeskPage; name: 'toBills' | 'toClaims' | 'toDeposits' | 'toAccount' }>
> = {
  'invoice-missing': { to: '/s/$storehouse/books/bills', name: 'toBills' },
  'claim-open': { to: '/s/$storehouse/books/claims', name: 'toClaims' },
  'deposit-held': { to: '/s/$storehouse/books/deposits', name: 'toDeposits' },
  'clearing-not-zero': { to: '/s/$storehouse/books/clearing/$buy', name: 'toAccount' },
};
type DeskPage =
  | '/s/$storehouse/books/bills'
  | '/s/$storehouse/books/claims'
  | '/s/$storehouse/books/deposits'
  | '/s/$storehouse/books/clearing/$buy';

function useClosingCommand(buy: string, name: 'recharging' | 'closing') {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy };
  return useMutation({
    mutationFn: async () => {
      await askOnce(`${name}.${buy}`, {}, async (headers) =>
        name === 'closing'
          ? ofBuy.closing.$post({ param }, { headers })
          : ofBuy.recharging.$post({ param }, { headers }),
      );
    },
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
}

function Recharge({ buy }: { buy: string }) {
  const t = useClosingText();
  const { duties } = useHouse();
  const recharging = useClosingCommand(buy, 'recharging');
  if (!['coordinator', 'treasurer'].some((duty) => duties.includes(duty))) return null;
  return (
    <NextStep title={t.rechargeTitle}>
      <p>{t.rechargePosts}</p>
      <ProblemSaid error={recharging.error} />
      <div>
        <button
          type="button"
          className="btn go"
          disabled={recharging.isPending}
          onClick={() => recharging.mutate()}
        >
          {t.recharge}
        </button>
      </div>
    </NextStep>
  );
}

function Close({ buy }: { buy: string }) {
  const t = useClosingText();
  const { duties } = useHouse();
  const closing = useClosingCommand(buy, 'closing');
  if (!duties.includes('treasurer')) return <p>{t.treasurerCloses}</p>;
  return (
    <NextStep title={t.closeTitle}>
      <p>{t.closePosts}</p>
      <ProblemSaid error={closing.error} />
      <div>
        <button
          type="button"
          className="btn go"
          disabled={closing.isPending}
          onClick={() => closing.mutate()}
        >
          {t.close}
        </button>
      </div>
    </NextStep>
  );
}
