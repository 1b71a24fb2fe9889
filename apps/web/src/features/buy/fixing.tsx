import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { buyQuery, quotesQuery, storehouseQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { NextStep, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import type { BuyPage, Quote } from './buy-body.ts';
import { FixedBuy } from './fixed-buy.tsx';
import { DroppedTable, type Names, WhoGetsWhat } from './fixing-tables.tsx';
import { foodNameOf } from './food-name.ts';
import { OverrideForm } from './override-form.tsx';
import { type Fixing, fixingQuery, householdPledgesQuery, householdsQuery } from './run-queries.ts';
import { useFixing } from './use-fixing.ts';
import { useOrderText, useRunText } from './words.ts';
import './run.css';

/** The look before fixing: who gets what, who is left out and why, and what is still missing. */
export function FixBuy() {
  const words = useOrderText();
  const param = useParams({ from: '/s/$storehouse/buys/$buy/fixing' });
  const buy = useQuery(buyQuery(param));
  return (
    <Loaded isPage reading={buy}>
      {(page) => (
        <>
          <div className="row place">
            <Link className="who" to="/s/$storehouse/buys/$buy/run" params={param}>
              <BackIcon />
              {page.name}
            </Link>
          </div>
          {page.stage === 'gathering' ? <Look buy={page} /> : null}
          {page.stage === 'fixed' ? <FixedBuy buy={page} /> : null}
          {page.stage === 'gathering' || page.stage === 'fixed' ? null : <h1>{words.notHere(page.name)}</h1>}
        </>
      )}
    </Loaded>
  );
}

function Look({ buy }: { buy: BuyPage }) {
  const { storehouse } = useHouse();
  const param = { storehouse, buy: buy.id };
  const look = useQuery(fixingQuery(param));
  const quotes = useQuery(quotesQuery(param));
  const households = useQuery(householdsQuery({ storehouse }));
  const pledges = useQuery(householdPledgesQuery(param));
  return (
    <Loaded isPage reading={joined(joined(look, quotes), joined(households, pledges))}>
      {([[found, { quotes: offered }], [known, pledged]]) => (
        <LookSheet
          buy={buy}
          look={found}
          quotes={offered}
          names={{
            household: (id) => known.find((one) => one.id === id)?.name ?? '',
            wantedGrams: (id) => pledged.find((pledge) => pledge.id === id)?.wantedGrams ?? 0,
          }}
        />
      )}
    </Loaded>
  );
}

type SheetProps = { buy: BuyPage; look: Fixing; quotes: readonly Quote[]; names: Names };

function LookSheet({ buy, look, quotes, names }: SheetProps) {
  const words = useOrderText();
  const { format } = useHouse();
  useTitle(`${words.fixTitle}, ${buy.name}`);
  const bought = look.lines.flatMap((line) => {
    const bags = line.bags.reduce((sum, bag) => sum + bag.bags, 0);
    const of = buy.lines.find(({ id }) => id === line.lineId);
    return bags > 0 && of ? [words.bagsOf(bags, foodNameOf(of, format.language))] : [];
  });
  return (
    <>
      <h1>
        {bought.length === 0
          ? words.nothingBought
          : words.fixingTitle(bought.join(', '), format.money(look.totalMinorUnits), look.currency)}{' '}
        {look.dropped.length === 0 ? words.nobodyLeftOut : words.leftOut(look.dropped.length)}
      </h1>
      <div className="run">
        <div className="stack run-step">
          <FixStep buy={buy} look={look} />
          <Warnings buy={buy} look={look} quotes={quotes} />
        </div>
        <div className="stack run-foods">
          <DroppedTable buy={buy} look={look} names={names} />
          <WhoGetsWhat buy={buy} lines={look.lines} names={names} />
        </div>
        <div className="stack run-rest">
          <p className="soft">
            {words.certificate(look.baskets.every(({ certificate }) => certificate.isProvenBest))}
          </p>
          <OverrideForm buy={buy} look={look} quotes={quotes} names={names} />
        </div>
      </div>
    </>
  );
}

function FixStep({ buy, look }: { buy: BuyPage; look: Fixing }) {
  const words = useOrderText();
  const run = useRunText();
  const { storehouse, format } = useHouse();
  const here = useQuery(storehouseQuery({ storehouse }));
  const { fix, error, isPending } = useFixing(buy.id);
  const served = new Set(
    look.lines.flatMap((line) =>
      (line.pledges ?? []).filter(({ units }) => units > 0).map(({ householdId }) => householdId),
    ),
  );
  const grams = look.lines.reduce(
    (sum, line) => sum + (line.pledges ?? []).reduce((part, pledge) => part + pledge.grams, 0),
    0,
  );
  const percent = here.data?.rules.depositPercent;
  return (
    <NextStep title={words.fixTitle}>
      {look.missing.length > 0 ? (
        <>
          <p>{words.cantFix}</p>
          <ul className="todo" aria-label={run.missingTitle}>
            {look.missing.map(({ code, count, words: said }) => (
              <li key={code}>
                <span>
                  {count !== undefined && count > 1 ? <b>{`${count} × `}</b> : null}
                  {said}
                </span>
              </li>
            ))}
          </ul>
        </>
      ) : (
        <>
          {percent === undefined ? null : <p>{words.fixWords(served.size, format.mass(grams), percent)}</p>}
          <div className="actions">
            <button type="button" className="btn go" disabled={isPending} onClick={() => fix({})}>
              {words.fixNow}
            </button>
          </div>
        </>
      )}
      {error ? <ProblemSaid error={error} /> : null}
    </NextStep>
  );
}

function Warnings({ buy, look, quotes }: { buy: BuyPage; look: Fixing; quotes: readonly Quote[] }) {
  const words = useOrderText();
  const { format } = useHouse();
  if (look.warnings.length === 0) return null;
  return (
    <section className="stack">
      <h2>
        <State kind="watch" word={words.watch} />
      </h2>
      <ul>
        {look.warnings.map((warning) => {
          if (warning.code === 'quote-lapses-soon') {
            const supplier = quotes.find(({ id }) => id === warning.quoteId)?.supplier.name ?? '';
            return (
              <li key={`lapses ${warning.quoteId}`}>
                {words.lapsesSoon(supplier, format.day(warning.validUntilOn))}
              </li>
            );
          }
          const line = buy.lines.find(({ id }) => id === warning.lineId);
          const food = line ? foodNameOf(line, format.language) : '';
          return (
            <li key={`cheaper ${warning.lineId}`}>
              {words.cheaper(food, warning.bags, format.money(warning.extraCostMinorUnits))}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
