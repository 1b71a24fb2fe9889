import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { buyQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { KeyPickUp } from './key-pick-up.tsx';
import { KeySheet } from './key-sheet.tsx';
import { KeySlip } from './key-slip.tsx';
import { type FoundPaper, keyingsQuery, paperQuery } from './queries.ts';
import { usePaperText } from './words.ts';

/** What the code or the QR on a paper leads back to, and where a pen's words are keyed in. */
export function Paper() {
  const { storehouse, code } = useParams({ from: '/s/$storehouse/papers/$code' });
  const found = useQuery(paperQuery({ storehouse, paper: code }));
  const words = usePaperText();
  return (
    <>
      {found.data ? null : <h1>{words.paper}</h1>}
      <Loaded reading={found}>{(paper) => <Found paper={paper} />}</Loaded>
      {found.error && !found.data ? <p className="soft">{words.noSuchCode}</p> : null}
    </>
  );
}

function Found({ paper }: { paper: FoundPaper }) {
  const words = usePaperText();
  const { format } = useHouse();
  const kind = words.kinds[paper.kind] ?? paper.kind;
  useTitle(`${kind} ${paper.spelled}`);
  return (
    <>
      <h1>{words.stands(kind, paper.paperNo, format.instant(paper.printedAt))}</h1>
      <p className="soft">
        <b>{paper.spelled}</b>
        <br />
        {words.asOf(paper.asOfEntryNo)}
      </p>
      <div className="actions">
        <WayBack paper={paper} />
      </div>
      {paper.buyId === null ? null : <OfBuy paper={paper} buyId={paper.buyId} />}
    </>
  );
}

/** The page that shows on a screen what the paper says. */
function WayBack({ paper }: { paper: FoundPaper }) {
  const words = usePaperText();
  const { storehouse, household } = useHouse();
  const shared = { className: 'btn', children: words.goThere };
  const buy = paper.buyId ?? '';
  if (paper.kind === 'statement')
    return paper.householdId === household ? (
      <Link to="/s/$storehouse/statement" params={{ storehouse }} {...shared} />
    ) : (
      <Link
        to="/s/$storehouse/books/statements/$household"
        params={{ storehouse, household: paper.householdId ?? '' }}
        {...shared}
      />
    );
  if (paper.kind === 'month')
    return (
      <Link
        to="/s/$storehouse/people/$household"
        params={{ storehouse, household: paper.householdId ?? '' }}
        {...shared}
      />
    );
  if (paper.kind === 'run-sheet')
    return (
      <Link
        to="/s/$storehouse/packing/$session/plan"
        params={{ storehouse, session: paper.subjectId ?? '' }}
        {...shared}
      />
    );
  const subject = paper.subjectId ?? '';
  const within = paper.withinId ?? '';
  if (paper.kind === 'loan-slip')
    return (
      <Link
        to="/s/$storehouse/equipment/$item/loans/$loan"
        params={{ storehouse, item: within, loan: subject }}
        {...shared}
      />
    );
  if (paper.kind === 'seam-log' || (paper.kind === 'quarantine-tag' && paper.withinId !== null))
    return (
      <Link
        to="/s/$storehouse/packing/$session/seals"
        params={{ storehouse, session: paper.kind === 'seam-log' ? subject : within }}
        {...shared}
      />
    );
  if (paper.kind === 'gift-manifest')
    return (
      <Link
        to="/s/$storehouse/giving/manifests/$manifest"
        params={{ storehouse, manifest: subject }}
        {...shared}
      />
    );
  if (paper.kind === 'recall-notice')
    return <Link to="/s/$storehouse/holds/$hold" params={{ storehouse, hold: subject }} {...shared} />;
  if (paper.kind === 'handover')
    return <Link to="/s/$storehouse/handover" params={{ storehouse }} {...shared} />;
  if (paper.kind === 'year-review')
    return <Link to="/s/$storehouse/books/year" params={{ storehouse }} {...shared} />;
  if (paper.kind === 'shelf-list' || paper.kind === 'eat-first-list')
    return paper.householdId === null ? (
      <Link to="/s/$storehouse/giving" params={{ storehouse }} {...shared} />
    ) : (
      <Link to="/s/$storehouse/shelf" params={{ storehouse }} {...shared} />
    );
  if (paper.kind === 'inspection-sheet')
    return (
      <Link
        to="/s/$storehouse/inspections"
        params={{ storehouse }}
        search={paper.householdId === null ? { of: 'common' } : {}}
        {...shared}
      />
    );
  if (paper.kind === 'gift-year')
    return <Link to="/s/$storehouse/giving/year" params={{ storehouse }} {...shared} />;
  if (paper.kind === 'offer-notice' || paper.kind === 'transfer-slip')
    return <Link to="/s/$storehouse/offers/$offer" params={{ storehouse, offer: subject }} {...shared} />;
  // A bag's hold stands on its buy's landing page; a wider one has no page, but whoever it reaches was told of it.
  if (paper.kind === 'quarantine-tag' && paper.buyId === null)
    return <Link to="/s/$storehouse/notices" params={{ storehouse }} {...shared} />;
  if (paper.kind === 'quarantine-tag')
    return <Link to="/s/$storehouse/buys/$buy/landing" params={{ storehouse, buy }} {...shared} />;
  if (paper.kind === 'who-owes')
    return <Link to="/s/$storehouse/books/owing" params={{ storehouse }} {...shared} />;
  if (paper.kind === 'landing-sheet')
    return <Link to="/s/$storehouse/buys/$buy/landing" params={{ storehouse, buy }} {...shared} />;
  if (paper.kind === 'split-sheet')
    return <Link to="/s/$storehouse/buys/$buy/split" params={{ storehouse, buy }} {...shared} />;
  return <Link to="/s/$storehouse/buys/$buy" params={{ storehouse, buy }} {...shared} />;
}

function OfBuy({ paper, buyId }: { paper: FoundPaper; buyId: string }) {
  const { storehouse, duties } = useHouse();
  const buy = useQuery(buyQuery({ storehouse, buy: buyId }));
  const mayHandle = duties.includes('coordinator') || duties.includes('packing_lead');
  return (
    <>
      {paper.kind === 'pledge-slip' ? (
        <Loaded reading={buy}>{(page) => <KeySlip buy={page} paper={paper} />}</Loaded>
      ) : null}
      {paper.kind === 'landing-sheet' && mayHandle ? (
        <Loaded reading={buy}>{(page) => <KeySheet buy={page} paper={paper} />}</Loaded>
      ) : null}
      {paper.kind === 'split-sheet' && mayHandle ? (
        <Loaded reading={buy}>{(page) => <KeyPickUp buy={page} paper={paper} />}</Loaded>
      ) : null}
      <Keyings buyId={buyId} code={paper.code} />
    </>
  );
}

/** What was keyed in from this very paper, with both times. */
function Keyings({ buyId, code }: { buyId: string; code: string }) {
  const words = usePaperText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(keyingsQuery({ storehouse, buy: buyId }));
  const own = reading.data?.keyings.filter(({ paperCode }) => paperCode === code) ?? [];
  if (own.length === 0) return null;
  return (
    <section className="stack">
      <h2>{words.keyings}</h2>
      <ul className="list">
        {own.map((keying) => (
          <li key={keying.id}>
            <b>{words.keyingKinds[keying.what] ?? keying.what}</b>, {keying.keyedBy}
            <br />
            {words.written(format.instant(keying.writtenAt), format.instant(keying.keyedAt))}
            {keying.isEnteredFor ? `, ${words.enteredFor}` : ''}
          </li>
        ))}
      </ul>
    </section>
  );
}
