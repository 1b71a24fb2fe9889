import { Link } from '@tanstack/react-router';
import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger, State } from '../../ui/pieces.tsx';
import { useBooksText } from '../books/words.ts';
import { useReviewText } from './words.ts';

type Body = Exclude<
  InferResponseType<(typeof api.storehouses)[':storehouse']['traces']['$get'], 200>,
  string
>;
type Trace = Body['traces'][number];
type OfKind<Kind extends Trace['kind']> = Extract<Trace, { kind: Kind }>;
type Vessel = OfKind<'bag'> | OfKind<'container'>;

/** One trace: a bag or a container with its grams on their way, or an entry of money with its movements. */
export function TraceView({ trace }: { trace: Trace }) {
  return (
    <section className="stack">
      {trace.kind === 'entry' ? <EntryTrace trace={trace} /> : <VesselTrace trace={trace} />}
    </section>
  );
}

function VesselTrace({ trace }: { trace: Vessel }) {
  const t = useReviewText();
  const { format } = useHouse();
  const { code, inGrams, outGrams, leftGrams, addsUp } = trace;
  return (
    <>
      <div className="row">
        <h2>{code}</h2>
        {addsUp === null ? (
          <State kind="well" word={t.endsAtHome} />
        ) : (
          <State kind={addsUp ? 'well' : 'wrong'} word={addsUp ? t.addsUp : t.doesNotAddUp} />
        )}
      </div>
      <Origin trace={trace} />
      <Ledger
        caption={code}
        columns={[
          { name: t.way },
          { name: t.place },
          { name: t.whose },
          { name: t.gramsHead, isNumber: true },
        ]}
        rows={[
          ...trace.steps.map((step, at) => ({
            key: `${at} ${step.way} ${step.place} ${step.owner} ${step.ownerName}`,
            cells: [
              t.ways[trace.kind]?.[step.way] ?? step.way,
              t.placesOf[step.place] ?? step.place,
              step.ownerName ?? t.owners[step.owner] ?? step.owner,
              format.count(step.grams),
            ],
          })),
          {
            key: 'sum',
            isSum: true,
            cells: [
              outGrams === null || leftGrams === null
                ? t.inOnly
                : t.inIsOut(format.count(inGrams), format.count(outGrams), format.count(leftGrams)),
              '',
              '',
              format.count(inGrams),
            ],
          },
        ]}
      />
    </>
  );
}

/** Where it came from: a supplier's lot and the delivery, or an opening stock and the import that brought it. */
function Origin({ trace }: { trace: Vessel }) {
  const t = useReviewText();
  const { format } = useHouse();
  const named = (thing: { nameEn: string; nameEs: string }) => nameIn(format.language, thing);
  const food = named(trace.food);
  if (trace.kind === 'bag')
    return (
      <p>
        {t.wayOf({
          ...{ food, supplier: trace.supplier, mark: trace.supplierMark, buy: trace.buy },
          day: format.day(trace.arrivedOn),
        })}
      </p>
    );
  const { supplier, supplierMark, buy, bags, originNote, importNo } = trace;
  return (
    <>
      <p>
        {t.containerOf(named(trace.kindOf), food, trace.isCommon)}{' '}
        {supplier && buy ? t.lotOf(supplier, supplierMark, buy) : t.openingOf(originNote, importNo)}
      </p>
      {bags.map(({ bagCode, arrivedOn, grams }) => (
        <p key={bagCode}>{t.fromBag(bagCode, format.count(grams), format.day(arrivedOn))}</p>
      ))}
    </>
  );
}

function EntryTrace({ trace }: { trace: OfKind<'entry'> }) {
  const t = useReviewText();
  const books = useBooksText();
  const { storehouse, format } = useHouse();
  const { code, entry } = trace;
  if (entry === null)
    return (
      <>
        <h2>{code}</h2>
        <p className="soft">{t.entryHidden}</p>
      </>
    );
  return (
    <>
      <h2>
        {code} {books.whats[entry.what] ?? entry.what}
      </h2>
      <p>
        {t.entryOf(format.day(entry.onDay), entry.enteredBy ?? '', entry.buy)} {entry.note}
      </p>
      {entry.reversesEntryNo === null ? null : <p>{books.reverses(entry.reversesEntryNo)}</p>}
      {entry.reversedByEntryNo === null ? null : <p>{books.reversedBy(entry.reversedByEntryNo)}</p>}
      <Ledger
        caption={code}
        columns={[{ name: books.debit }, { name: books.credit }, { name: books.amount, isNumber: true }]}
        rows={entry.movements.map((movement) => ({
          key: String(movement.line),
          cells: movement.isHomeStock
            ? [books.homeStock, '', '']
            : [
                accountName(movement.to),
                accountName(movement.from),
                movement.unit === 'currency'
                  ? format.money(movement.amount)
                  : books.grams(format.count(movement.amount)),
              ],
        }))}
      />
      <p>
        <Link to="/s/$storehouse/books/entries/$entry" params={{ storehouse, entry: entry.id }}>
          {t.toEntry(entry.entryNo)}
        </Link>
      </p>
    </>
  );
}

const accountName = ({ number, name }: { number: string | null; name: string }) =>
  number === null ? name : `${number} ${name}`;
