import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, NextStep, State } from '../../ui/pieces.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { auditPlace } from './audit-places.ts';
import { CanTrace } from './can-trace.tsx';
import { CountsMatch } from './counts-match.tsx';
import { Exceptions } from './exceptions.tsx';
import { Outside } from './outside.tsx';
import { auditQuery } from './queries.ts';
import { useReviewText } from './words.ts';

/** The reviewer's first page: every invariant of the book, recomputed just now, each with its figure. */
export function AuditPage() {
  const t = useReviewText();
  const { storehouse, format, duties } = useHouse();
  const readsBooks = duties.includes('treasurer') || duties.includes('reviewer');
  const reading = useQuery(auditQuery({ storehouse }));
  return (
    <BooksPage title={t.audit}>
      <Loaded isPage reading={reading}>
        {(body) => {
          const failing = body.findings.filter(({ holds }) => !holds).length;
          return (
            <>
              <h1>
                {failing === 0 ? t.allHold(body.findings.length) : t.someFail(failing, body.findings.length)}
              </h1>
              <p className="soft">
                {t.lookedAt(format.count(body.ledger.entries), format.count(body.ledger.movements))}
              </p>
              <NextStep title={t.reviewNext}>
                <div className="actions">
                  <Link className="btn go" to="/s/$storehouse/books/traces" params={{ storehouse }}>
                    {t.drawTraces}
                  </Link>
                  <Link className="btn" to="/s/$storehouse/books/counts" params={{ storehouse }}>
                    {t.countStock}
                  </Link>
                  <Link className="btn" to="/s/$storehouse/books/year" params={{ storehouse }}>
                    {t.signYear}
                  </Link>
                </div>
              </NextStep>
              <Ledger
                caption={t.audit}
                columns={[{ name: t.invariant }, { name: t.state }, { name: t.figure }]}
                rows={body.findings.map(({ number, key, invariant, holds, figure }) => ({
                  key,
                  cells: [
                    `${number}. ${invariant}`,
                    <State key="state" kind={holds ? 'well' : 'wrong'} word={holds ? t.holds : t.fails} />,
                    <Figure key="figure" invariant={key} figure={figure} />,
                  ],
                }))}
              />
              <CountsMatch />
              <CanTrace audit={body} />
              {readsBooks ? (
                <>
                  <Outside />
                  <Exceptions />
                </>
              ) : null}
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

/** What was counted, leading to the page where it stands. */
function Figure({ invariant, figure }: { invariant: string; figure: string }) {
  const { storehouse, duties } = useHouse();
  const place = auditPlace(invariant, duties.includes('treasurer') || duties.includes('reviewer'));
  return place === undefined ? (
    figure
  ) : (
    <Link to={place} params={{ storehouse }}>
      {figure}
    </Link>
  );
}
