import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { buyQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep, State } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { WithWaiting } from '../../ui/with-waiting.tsx';
import { BagList } from './bag-list.tsx';
import { Claims } from './claims.tsx';
import { CountForm } from './count-form.tsx';
import { EndLanding } from './end-landing.tsx';
import { kindsOf } from './floor-figure.tsx';
import { type Bag, type Delivery, nameOfLine, type Sheet } from './landing-body.ts';
import { LorryForm } from './lorry-form.tsx';
import { isRefused, type Written } from './queue.ts';
import {
  type Floor,
  floorOf,
  type Landing,
  linesOf,
  type OpenLorry,
  openDelivery,
  useLanding,
} from './use-landing.ts';
import { WaitingList } from './waiting-list.tsx';
import { useLandingText } from './words.ts';

const LANDERS = ['coordinator', 'packing_lead'];
const OPEN_STAGES = ['ordered', 'landed', 'shared-out'];

/** A buy's lorry, from its first wheel in the yard to the last bag: what to do next stands first. */
export function LandingPage() {
  const t = useLandingText();
  const { buy } = useParams({ from: '/s/$storehouse/buys/$buy/landing' });
  const { storehouse } = useHouse();
  const landing = useLanding(buy);
  const facts = useQuery({ ...buyQuery({ storehouse, buy }), gcTime: 86_400_000 });
  return (
    <div className="lorry">
      <Link className="who" to="/s/$storehouse/buys/$buy" params={{ storehouse, buy }}>
        <BackIcon />
        {facts.data?.name ?? t.toBuy}
      </Link>
      <Loaded isPage reading={landing.reading}>
        {([sheet, [deliveries, bags]]) => (
          <Yard landing={landing} sheet={sheet} deliveries={deliveries} bags={bags} />
        )}
      </Loaded>
    </div>
  );
}

type YardProps = { landing: Landing; sheet: Sheet; deliveries: readonly Delivery[]; bags: readonly Bag[] };

function Yard({ landing, sheet, deliveries, bags }: YardProps) {
  const t = useLandingText();
  const { duties, format } = useHouse();
  const [mending, setMending] = useState<Written | null>(null);
  const { queue } = landing;
  const lorry = openDelivery(queue, deliveries);
  const known = { queue, deliveries, bags };
  const floors = lorry
    ? linesOf(sheet, lorry.supplierId)
        .map((line) => floorOf(line, lorry, known))
        .filter(({ line, counted }) => counted !== null || !isCountedBefore(line, deliveries, lorry.id))
    : [];
  const mayLand = LANDERS.some((duty) => duties.includes(duty)) && OPEN_STAGES.includes(sheet.stage);
  const sentence = useSentence({ sheet, lorry, floors });
  useTitle(t.landing);
  return (
    <>
      <h1>{sentence}</h1>
      <WithWaiting
        isRefused={isRefused(queue)}
        waiting={<WaitingList landing={landing} lines={sheet.lines} onMend={setMending} />}
      >
        {mending?.act.kind === 'delivery' ? (
          <NextStep title={t.putRight}>
            <LorryForm landing={landing} sheet={sheet} mending={mending} onDone={() => setMending(null)} />
          </NextStep>
        ) : mayLand ? (
          <Step landing={landing} sheet={sheet} lorry={lorry} floors={floors} />
        ) : null}
      </WithWaiting>
      {lorry ? <Sizes floors={floors} /> : null}
      <Totals sheet={sheet} />
      <Claims sheet={sheet} />
      <BagList bags={bags} sheet={sheet} />
      {deliveries.length === 0 ? null : (
        <section className="stack tight">
          <h2>{t.lorries}</h2>
          <ul className="list">
            {deliveries.map((one) => (
              <li key={one.id} className="stack tight">
                <p>
                  <b>{t.part(one.partNo)}</b> {format.day(one.arrivedOn)}
                  {one.carrier === '' ? '' : `, ${one.carrier}`}
                  {one.countedBy === '' ? '' : `. ${t.countedByWhom(one.countedBy)}`}
                </p>
                {one.carrierNote === '' ? null : <p className="soft">{one.carrierNote}</p>}
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

/** A size that an earlier lorry brought is counted again only when this one brought some too. */
const isCountedBefore = (
  { bagOfferId }: { bagOfferId: string },
  deliveries: readonly Delivery[],
  lorryId: string,
): boolean =>
  deliveries.some(
    ({ id, counts }) => id !== lorryId && counts.some((count) => count.bagOfferId === bagOfferId),
  ) && deliveries.some(({ id }) => id === lorryId) === false;

function useSentence({
  sheet,
  lorry,
  floors,
}: {
  sheet: Sheet;
  lorry: OpenLorry | null;
  floors: readonly Floor[];
}) {
  const t = useLandingText();
  const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);
  if (lorry && floors.some(({ counted }) => counted === null)) return t.lorryIsHere;
  const counted = sum(floors.map((floor) => floor.counted ?? 0));
  const done = sum(floors.map(({ bags, waiting }) => bags.length + waiting.length));
  if (lorry && done < counted) return t.weighedOf(done, counted);
  const came = sum(sheet.lines.map((line) => line.countedBags ?? 0));
  const ordered = sum(sheet.lines.map((line) => line.orderedBags));
  if (lorry === null && sheet.lines.every((line) => line.countedBags === null)) return t.nothingYet(ordered);
  return t.came(came, ordered);
}

type StepProps = { landing: Landing; sheet: Sheet; lorry: OpenLorry | null; floors: readonly Floor[] };

function Step({ landing, sheet, lorry, floors }: StepProps) {
  const t = useLandingText();
  const { format, storehouse } = useHouse();
  const [isCounting, setCounting] = useState(false);
  const [isNew, setNew] = useState(false);
  const isBegun = sheet.deliveries.length > 0;
  if (lorry === null && isBegun && !isNew)
    return (
      <>
        {sheet.stage === 'ordered' || sheet.stage === 'landed' ? (
          <EndLanding landing={landing} lorry={lorry} stage={sheet.stage} />
        ) : null}
        <button type="button" className="btn" onClick={() => setNew(true)}>
          {t.furtherLorry}
        </button>
      </>
    );
  if (lorry === null)
    return (
      <NextStep title={t.lorryTitle}>
        <LorryForm landing={landing} sheet={sheet} mending={null} onDone={() => setNew(false)} />
      </NextStep>
    );
  if (floors.some(({ counted }) => counted === null) || isCounting)
    return (
      <NextStep title={t.countTitle}>
        <CountForm landing={landing} lorry={lorry} floors={floors} onDone={() => setCounting(false)} />
      </NextStep>
    );
  const open = floors.find((floor) => kindsOf(floor).includes('now'));
  return (
    <>
      {open ? (
        <NextStep>
          <Link
            className="btn go"
            to="/s/$storehouse/buys/$buy/landing/$size"
            params={{ storehouse, buy: sheet.buyId, size: open.line.bagOfferId }}
          >
            {t.goOn(nameOfLine(open.line, format.language), kindsOf(open).indexOf('now') + 1)}
          </Link>
        </NextStep>
      ) : (
        <EndLanding landing={landing} lorry={lorry} stage={sheet.stage} />
      )}
      <button type="button" className="btn" onClick={() => setCounting(true)}>
        {t.countAgain}
      </button>
    </>
  );
}

/** The sizes on this lorry, each a way to the scale. */
function Sizes({ floors }: { floors: readonly Floor[] }) {
  const t = useLandingText();
  const { format, storehouse } = useHouse();
  const { buy } = useParams({ from: '/s/$storehouse/buys/$buy/landing' });
  const counted = floors.filter((floor) => floor.counted !== null);
  if (counted.length === 0) return null;
  return (
    <section className="stack tight">
      <h2>{t.onThisLorry}</h2>
      <ul className="list">
        {counted.map((floor) => {
          const { line } = floor;
          const done = floor.bags.length + floor.waiting.length;
          const isDone = done >= (floor.counted ?? 0);
          return (
            <li key={line.bagOfferId}>
              <Link
                to="/s/$storehouse/buys/$buy/landing/$size"
                params={{ storehouse, buy, size: line.bagOfferId }}
              >
                <span>
                  <b>{nameOfLine(line, format.language)}</b>
                  <br />
                  <span className="soft">{line.bagLabel}</span>
                </span>
                <State
                  kind={isDone ? 'well' : 'watch'}
                  word={t.doneOf(format.count(done), format.count(floor.counted ?? 0))}
                />
              </Link>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Ordered and come, by size, and what each holds in all. */
function Totals({ sheet }: { sheet: Sheet }) {
  const t = useLandingText();
  const { format } = useHouse();
  const counted = sheet.lines.filter(({ countedBags }) => countedBags !== null);
  if (counted.length === 0) return null;
  return (
    <section className="stack tight">
      <h2>{t.orderedAndCame}</h2>
      <ul className="list">
        {counted.map((line) => (
          <li key={line.bagOfferId} className="row">
            <span>
              <b>{nameOfLine(line, format.language)}</b>{' '}
              {t.cameOf(line.countedBags ?? 0, line.orderedBags, line.bagLabel)}{' '}
              {line.shortBags ? <b>{t.shortBy(line.shortBags)}</b> : null}
              {line.overBags ? <b>{t.overBy(line.overBags)}</b> : null}
            </span>
            <span className="num">
              {format.mass(line.netGrams)} <span className="u">{`${format.count(line.netGrams)} g`}</span>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
