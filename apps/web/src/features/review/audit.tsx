import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, NextStep, State } from '../../ui/pieces.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { auditQuery } from './queries.ts';
import { useReviewText } from './words.ts';

/** The reviewer's first page: every invariant of the book, recomputed just now, each with its figure. */
export function AuditPage() {
  const t = useReviewText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(auditQuery({ storehouse }));
  return (
    <BooksPage title={t.audit}>
      <Loaded reading={reading}>
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
                rows={body.findings.map(({ number, invariant, holds, figure }) => ({
                  key: invariant,
                  cells: [
                    `${number}. ${invariant}`,
                    <State key="state" kind={holds ? 'well' : 'wrong'} word={holds ? t.holds : t.fails} />,
                    figure,
                  ],
                }))}
              />
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}
