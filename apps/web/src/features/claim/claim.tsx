import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { InferResponseType } from 'hono/client';
import { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures, Ledger } from '../../ui/pieces.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { ClaimAnswers } from '../books/claim-answers.tsx';
import { PostForm } from '../books/post-form.tsx';
import { useBooksText } from '../books/words.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { Photos } from '../photo/photos.tsx';
import { ClaimOutcome } from './outcome.tsx';
import { claimHistoryQuery } from './queries.ts';
import { useClaimText } from './words.ts';

const claims = api.storehouses[':storehouse'].claims[':claim'];
type History = InferResponseType<typeof claims.history.$get, 200>;

/** One claim: what was asked of whom and why, what happened since, and its answers while it has none. */
export function Claim() {
  const words = useClaimText();
  const { storehouse } = useHouse();
  const { claim } = useParams({ from: '/s/$storehouse/books/claims/$claim' });
  const reading = useQuery(claimHistoryQuery({ storehouse, claim }));
  return (
    <BooksPage title={words.claim}>
      <Loaded isPage reading={reading}>
        {(body) => <Story body={body} />}
      </Loaded>
    </BooksPage>
  );
}

function Story({ body: { claim, steps } }: { body: History }) {
  const words = useClaimText();
  const { storehouse, format, duties } = useHouse();
  const food = format.language === 'es' ? claim.foodEs : claim.food;
  return (
    <>
      <h1>{words.title(claim.supplier, format.money(claim.minorUnits))}</h1>
      <p>
        <ClaimOutcome outcome={claim.outcome} /> {[claim.buy, food].filter(Boolean).join(', ')}:{' '}
        {claim.because}
      </p>
      <Figures
        rows={[
          { name: words.claimed, value: format.money(claim.minorUnits) },
          { name: words.granted, value: format.money(claim.creditedMinorUnits) },
          {
            name: words.open,
            value: format.money(claim.outcome === 'open' ? claim.minorUnits : 0),
          },
        ]}
      />
      <Steps steps={steps} />
      <Photos buy={claim.buyId} shows="claim" thingId={claim.id} />
      <PaperLinks papers={[{ kind: 'claim-letter', path: `claims/${claim.id}/paper` }]} />
      {claim.outcome === 'open' && (duties.includes('treasurer') || duties.includes('coordinator')) ? (
        <ClaimAnswers claim={claim.id} supplier={claim.supplier} minorUnits={claim.minorUnits} />
      ) : null}
      {claim.outcome === 'open' && duties.includes('treasurer') ? (
        <GiveUp claim={claim.id} minorUnits={claim.minorUnits} />
      ) : null}
      <div className="actions">
        {claim.accountId === null ? null : (
          <Link
            className="btn"
            to="/s/$storehouse/books/accounts/$account"
            params={{ storehouse, account: claim.accountId }}
          >
            {words.entries}
          </Link>
        )}
        <Link className="btn quiet" to="/s/$storehouse/books/claims" params={{ storehouse }}>
          {words.all}
        </Link>
      </div>
    </>
  );
}

function Steps({ steps }: { steps: History['steps'] }) {
  const words = useClaimText();
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  return (
    <Ledger
      caption={words.history}
      columns={[{ name: t.day }, { name: t.what }, { name: t.by }, { name: t.entry }]}
      rows={steps.map((step, at) => ({
        key: `${at} ${step.what}`,
        cells: [
          format.day(step.onDay),
          [step.what === 'claim-letter' ? words.letter : (t.whats[step.what] ?? step.what), step.note]
            .filter(Boolean)
            .join(': '),
          step.by,
          step.entryId === null ? (
            ''
          ) : (
            <Link
              key="entry"
              to="/s/$storehouse/books/entries/$entry"
              params={{ storehouse, entry: step.entryId }}
            >
              {String(step.entryNo)}
            </Link>
          ),
        ],
      }))}
    />
  );
}

function GiveUp({ claim, minorUnits }: { claim: string; minorUnits: number }) {
  const words = useClaimText();
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  return (
    <PostForm
      name={`give-up.${claim}`}
      summary={words.giveUp}
      button={words.giveUp}
      fields={[{ name: 'because', label: t.reason, kind: 'text' }]}
      sentence={() => words.giveUpSentence(format.money(minorUnits))}
      send={({ because }, headers) =>
        claims['writing-off'].$post(
          { param: { storehouse, claim }, json: { because: String(because) } },
          { headers },
        )
      }
    />
  );
}
