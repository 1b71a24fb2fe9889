import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { CsvLink } from '../../ui/csv-link.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { ClaimOutcome } from './outcome.tsx';
import { answeredClaimsQuery } from './queries.ts';
import { useClaimText } from './words.ts';

/** The claims that had their answer, each with the way to its history. */
export function AnsweredClaims() {
  const words = useClaimText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(answeredClaimsQuery({ storehouse }));
  return (
    <section className="stack">
      <h2>{words.answered}</h2>
      <Loaded reading={reading}>
        {({ claims }) => {
          if (claims.length === 0) return <p className="soft">{words.noneAnswered}</p>;
          return (
            <Searched
              items={claims}
              wordsOf={({ supplier, buy, because }) => `${supplier} ${buy} ${because}`}
            >
              {(shown) => (
                <Ledger
                  caption={words.answered}
                  columns={[
                    { name: words.claim },
                    { name: words.outcome },
                    { name: words.claimed, isNumber: true },
                    { name: words.granted, isNumber: true },
                  ]}
                  rows={shown.map((claim) => ({
                    key: claim.id,
                    cells: [
                      <Link
                        key="claim"
                        to="/s/$storehouse/books/claims/$claim"
                        params={{ storehouse, claim: claim.id }}
                      >
                        {claim.supplier}, {claim.buy}: {claim.because}
                      </Link>,
                      <ClaimOutcome key="outcome" outcome={claim.outcome} />,
                      format.money(claim.minorUnits),
                      format.money(claim.creditedMinorUnits),
                    ],
                  }))}
                />
              )}
            </Searched>
          );
        }}
      </Loaded>
      <div className="actions">
        <CsvLink list="claims-answered">{words.asCsv}</CsvLink>
      </div>
    </section>
  );
}
