import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { CsvLink } from '../../ui/csv-link.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Searched } from '../../ui/searched.tsx';
import { AnsweredClaims } from '../claim/answered.tsx';
import { useClaimText } from '../claim/words.ts';
import { Photos } from '../photo/photos.tsx';
import { BooksPage } from './books-page.tsx';
import { ClaimAnswers } from './claim-answers.tsx';
import { openClaimsQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** Claims on suppliers that nobody has answered yet, oldest first, each with its two answers. */
export function ClaimsPage() {
  const t = useBooksText();
  const words = useClaimText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(openClaimsQuery({ storehouse }));
  const mayPost = duties.includes('treasurer') || duties.includes('coordinator');
  return (
    <BooksPage title={t.claims}>
      <Loaded isPage reading={reading}>
        {(body) => (
          <>
            <h1>
              {body.claims.length === 0
                ? t.noClaims
                : t.claimsTitle(body.claims.length, format.money(body.outstandingMinorUnits))}
            </h1>
            <Searched
              items={body.claims}
              wordsOf={({ supplier, buy, because }) => `${supplier} ${buy} ${because}`}
            >
              {(shown) => (
                <ul className="list">
                  {shown.map((claim) => (
                    <li key={claim.claimId} className="stack claim">
                      <div className="row">
                        <span>
                          <b>{claim.supplier}</b>
                          <br />
                          <span className="soft">
                            {claim.buy}: {claim.because}
                          </span>
                        </span>
                        <span className="num">
                          <b>{format.money(claim.outstandingMinorUnits)}</b>
                          <br />
                          <span className="soft">{t.ageDays(claim.ageDays)}</span>
                        </span>
                      </div>
                      <p>
                        <Link
                          to="/s/$storehouse/books/claims/$claim"
                          params={{ storehouse, claim: claim.claimId }}
                        >
                          {words.openIt}
                        </Link>
                      </p>
                      <Photos buy={claim.buyId} shows="claim" thingId={claim.claimId} />
                      {mayPost ? (
                        <ClaimAnswers
                          claim={claim.claimId}
                          supplier={claim.supplier}
                          minorUnits={claim.outstandingMinorUnits}
                        />
                      ) : null}
                    </li>
                  ))}
                </ul>
              )}
            </Searched>
            <p>
              <CsvLink list="claims-outstanding">{t.download}</CsvLink>
            </p>
            <AnsweredClaims />
          </>
        )}
      </Loaded>
    </BooksPage>
  );
}
