import { useQuery } from '@tanstack/react-query';
import { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Photos } from '../photo/photos.tsx';
import { BooksPage } from './books-page.tsx';
import { type PostBody, PostForm } from './post-form.tsx';
import { openClaimsQuery } from './queries.ts';
import { isTill, useTills } from './tills.ts';
import { useBooksText } from './words.ts';

const claims = api.storehouses[':storehouse'].claims[':claim'];

/** Claims on suppliers that nobody has answered yet, oldest first, each with its two answers. */
export function ClaimsPage() {
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(openClaimsQuery({ storehouse }));
  const mayPost = duties.includes('treasurer') || duties.includes('coordinator');
  return (
    <BooksPage title={t.claims}>
      <Loaded reading={reading}>
        {(body) => (
          <>
            <h1>
              {body.claims.length === 0
                ? t.noClaims
                : t.claimsTitle(body.claims.length, format.money(body.outstandingMinorUnits))}
            </h1>
            <ul className="list">
              {body.claims.map((claim) => (
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
            <p>
              <a
                className="btn"
                href={`/api/storehouses/${storehouse}/claims-outstanding?format=csv`}
                download
              >
                {t.download}
              </a>
            </p>
          </>
        )}
      </Loaded>
    </BooksPage>
  );
}

function ClaimAnswers({
  claim,
  supplier,
  minorUnits,
}: {
  claim: string;
  supplier: string;
  minorUnits: number;
}) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const tills = useTills(t.creditNote);
  const param = { storehouse, claim };
  return (
    <>
      <PostForm
        name={`credit.${claim}`}
        summary={t.granted}
        button={t.postCredit}
        fields={[
          { name: 'minorUnits', label: t.grantedAmount, kind: 'money', start: format.money(minorUnits) },
          { name: 'till', label: t.cameBy, kind: 'choice', options: tills, isOptional: true },
          { name: 'note', label: t.note, kind: 'text', isOptional: true },
        ]}
        sentence={(_, money) => t.creditSentence(money, supplier)}
        send={(body, headers) => claims.credit.$post({ param, json: creditOf(body) }, { headers })}
      />
      <PostForm
        name={`refuse.${claim}`}
        summary={t.refusedBySupplier}
        button={t.postRefusal}
        fields={[{ name: 'because', label: t.reason, kind: 'text' }]}
        sentence={() => t.refusalSentence(format.money(minorUnits))}
        send={(body, headers) =>
          claims.refusal.$post({ param, json: { because: String(body.because) } }, { headers })
        }
      />
    </>
  );
}

const creditOf = ({ minorUnits, till, note }: PostBody) => ({
  minorUnits: Number(minorUnits),
  note: String(note ?? ''),
  ...(isTill(till) ? { till } : {}),
});
