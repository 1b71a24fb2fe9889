import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { Part, type PartRow } from './part.tsx';
import { GivingPart, HelpersPart, OpenPart, OwedPart, StockPart, SuppliersPart } from './parts.tsx';
import { type HandoverPage, handoverQuery } from './queries.ts';
import { useDutiesNamed, useHandoverText } from './words.ts';

/** All that whoever takes over a duty needs to run the group; everything leads to its own page. */
export function Handover() {
  const words = useHandoverText();
  const { storehouse, duties } = useHouse();
  const isTheirs = duties.includes('coordinator') || duties.includes('treasurer');
  useTitle(words.title);
  return (
    <>
      <Link className="who" to="/s/$storehouse/people" params={{ storehouse }}>
        <BackIcon />
        {words.people}
      </Link>
      {isTheirs ? <Book /> : <h1>{words.notYours}</h1>}
    </>
  );
}

function Book() {
  const { storehouse } = useHouse();
  return (
    <Loaded isPage reading={useQuery(handoverQuery({ storehouse }))}>
      {(page) => <Sheet page={page} />}
    </Loaded>
  );
}

function Sheet({ page }: { page: HandoverPage }) {
  const words = useHandoverText();
  const { buys, sessions, claims } = page;
  const toSign = useToSign(page);
  return (
    <>
      <h1>{words.stands(buys.length, sessions.length, claims.length, toSign.length)}</h1>
      <p>{words.never}</p>
      <p className="soft">{page.seesAmounts ? words.withAmounts : words.withoutAmounts}</p>
      <PaperLinks papers={[{ kind: 'handover', path: 'handover/paper' }]} />
      <div className="cols">
        <div className="stack">
          <Part title={words.toSign} rows={toSign} />
          <OpenPart page={page} />
          <OwedPart page={page} />
        </div>
        <div className="stack">
          <Duties page={page} />
          <HelpersPart page={page} />
          <StockPart page={page} />
          <GivingPart page={page} />
          <SuppliersPart page={page} />
        </div>
      </div>
    </>
  );
}

/** The close of a year, the close of a month that a signature lacks, and the orders that wait to be agreed. */
function useToSign({ toSign, buys }: HandoverPage): PartRow[] {
  const words = useHandoverText();
  const { format } = useHouse();
  const named = useDutiesNamed();
  const { yearEndOn } = toSign;
  return [
    ...(yearEndOn === null
      ? []
      : [{ key: 'year', to: '/books/year', text: words.yearOpen(format.day(yearEndOn)), note: '' }]),
    ...toSign.closes.map(({ closedThrough, missing }) => ({
      key: closedThrough,
      to: '/books/year',
      text: words.close(format.day(closedThrough)),
      note: named(missing),
    })),
    ...buys
      .filter(({ stage }) => stage === 'fixed')
      .map(({ id, name, who }) => ({
        key: id,
        to: `/buys/${id}/order`,
        text: words.order(name),
        note: named(who),
      })),
  ];
}

function Duties({ page: { duties } }: { page: HandoverPage }) {
  const words = useHandoverText();
  const { format } = useHouse();
  return (
    <section className="stack">
      <h2>{words.duties}</h2>
      <ul className="list">
        {duties.map(({ duty, holders }) => (
          <li key={duty}>
            <p>
              <b>{words.dutyNames[duty] ?? duty}</b>
              {holders.length === 0 ? <span className="soft block">{words.nobody}</span> : null}
              {holders.map(({ personId, name, sinceOn, canSignIn, endsOn }) => (
                <span className="soft block" key={personId}>
                  {words.holder(name, format.day(sinceOn), canSignIn)}
                  {endsOn === null ? '' : `; ${words.endsOn(format.day(endsOn))}`}
                </span>
              ))}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}
