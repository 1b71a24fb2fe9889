import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { api } from '../../api/client.ts';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { PostForm } from '../books/post-form.tsx';
import { useBooksText } from '../books/words.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { MissingAtClose } from './missing.tsx';
import { closePreviewQuery, digestQuery, periodsQuery, yearEndQuery } from './queries.ts';
import { useReviewText } from './words.ts';

const inside = api.storehouses[':storehouse'];

/** The close of a year: what goes to the store fund, the close with its digest, and who signed it. */
export function Year() {
  const t = useReviewText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(periodsQuery({ storehouse }));
  return (
    <BooksPage title={t.year}>
      <Loaded isPage reading={reading}>
        {({ closedThrough, yearEndOn, closes }) => (
          <>
            <h1>{closedThrough === null ? t.neverClosed : t.closedThrough(format.day(closedThrough))}</h1>
            {duties.includes('treasurer') || duties.includes('reviewer') ? (
              <YearEnd closedThrough={closedThrough} yearEndOn={yearEndOn} />
            ) : null}
            {closes.map((close) => (
              <Close key={close.closedThrough} close={close} />
            ))}
            {SIGNERS.some((duty) => duties.includes(duty)) ? (
              <>
                <p>
                  <Link to="/s/$storehouse/savings" params={{ storehouse }}>
                    {t.savings}
                  </Link>
                </p>
                <PaperLinks papers={[SO_FAR, ...closes.map((close) => reviewOf(close, format))]} />
              </>
            ) : null}
          </>
        )}
      </Loaded>
    </BooksPage>
  );
}

type YearsEnd = { readonly closedThrough: string | null; readonly yearEndOn: string };

/** The end of the last year while it is open; days that are closed already are not offered again. */
const nextClose = (today: string, { closedThrough, yearEndOn }: YearsEnd): string =>
  closedThrough === null || closedThrough < yearEndOn ? yearEndOn : today;

/** First what would be carried, account by account; then carrying it; then closing the days behind it. */
function YearEnd(of: YearsEnd) {
  const t = useReviewText();
  const books = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const [throughOn, setThroughOn] = useState(() => nextClose(format.today(), of));
  const preview = useQuery(yearEndQuery({ storehouse }, throughOn));
  return (
    <section className="stack">
      <h2>{t.yearEnd}</h2>
      <p className="soft">{t.yearEnded(format.day(of.yearEndOn))}</p>
      <Field
        label={t.throughDay}
        type="date"
        value={throughOn}
        onChange={(event) => setThroughOn(event.target.value)}
      />
      {throughOn === '' ? null : (
        <Loaded reading={preview}>
          {(body) => (
            <>
              {body.accounts.length === 0 ? (
                <p>{t.nothingToCarry}</p>
              ) : (
                <Ledger
                  caption={t.yearEnd}
                  columns={[{ name: books.account }, { name: books.amount, isNumber: true }]}
                  rows={[
                    ...body.accounts.map((row, at) => ({
                      key: `${row.number} ${at}`,
                      cells: [
                        `${row.number} ${books.charts[row.number] ?? row.name}`,
                        format.money(row.balanceMinorUnits),
                      ],
                    })),
                    {
                      key: 'sum',
                      isSum: true,
                      cells: [t.toFund, format.money(body.toFundMinorUnits)],
                    },
                  ]}
                />
              )}
              {duties.includes('treasurer') && body.accounts.length > 0 ? (
                <PostForm
                  name={`year-end.${throughOn}`}
                  summary={t.carry}
                  button={books.post}
                  fields={[{ name: 'note', label: books.note, kind: 'text', isOptional: true }]}
                  sentence={() => t.carrySentence(format.money(body.toFundMinorUnits))}
                  send={({ note }, headers) =>
                    inside['year-ends'].$post(
                      { param: { storehouse }, json: { throughOn, note: String(note ?? '') } },
                      { headers },
                    )
                  }
                />
              ) : null}
            </>
          )}
        </Loaded>
      )}
      {throughOn === '' ? null : <CloseDays throughOn={throughOn} />}
    </section>
  );
}

/** What the close would leave open; and the close itself, for the treasurer, once nothing stands in its way. */
function CloseDays({ throughOn }: { throughOn: string }) {
  const t = useReviewText();
  const { storehouse, format, duties } = useHouse();
  const preview = useQuery(closePreviewQuery({ storehouse }, throughOn));
  return (
    <>
      <h3>{t.openAt(format.day(throughOn))}</h3>
      <Loaded reading={preview}>
        {({ missing, mayClose }) => (
          <>
            <MissingAtClose missing={missing} />
            {mayClose && duties.includes('treasurer') ? (
              <PostForm
                name={`close.${throughOn}`}
                summary={t.close(format.day(throughOn))}
                button={t.closeButton}
                fields={[]}
                sentence={() => t.closeSentence(format.day(throughOn), missing.length)}
                send={(_, headers) =>
                  inside.periods.$post({ param: { storehouse }, json: { throughOn } }, { headers })
                }
              />
            ) : null}
          </>
        )}
      </Loaded>
    </>
  );
}

type Closed = {
  readonly closedThrough: string;
  readonly closedAt: string;
  readonly closedBy: string;
  readonly entryCount: number | null;
  readonly digestSha256: string | null;
  readonly signatures: readonly {
    readonly duty: string;
    readonly signedBy: string;
    readonly signedAt: string;
    readonly remarks: string;
  }[];
};

const SIGNERS = ['reviewer', 'treasurer', 'coordinator'] as const;

const SO_FAR = { kind: 'year-review', path: 'year-review/paper' } as const;
const reviewOf = ({ closedThrough }: Closed, format: ReturnType<typeof useHouse>['format']) => ({
  ...{ kind: SO_FAR.kind, path: `${SO_FAR.path}?through=${closedThrough}` },
  of: format.day(closedThrough),
});

function Close({ close }: { close: Closed }) {
  const t = useReviewText();
  const { storehouse, format, duties } = useHouse();
  const { closedThrough, digestSha256 } = close;
  const missing = SIGNERS.filter((duty) => !close.signatures.some((signed) => signed.duty === duty));
  return (
    <section className="stack">
      <h2>{t.throughTitle(format.day(closedThrough))}</h2>
      <p>{t.closedBy(close.closedBy, format.instant(close.closedAt), close.entryCount)}</p>
      {digestSha256 === null ? <p className="soft">{t.noDigest}</p> : <Digest close={close} />}
      {close.signatures.map(({ duty, signedBy, signedAt, remarks }) => (
        <p key={duty}>
          <State kind="well" word={t.signed(t.duties[duty] ?? duty)} /> {signedBy}, {format.instant(signedAt)}
          {remarks ? `: ${remarks}` : ''}
        </p>
      ))}
      {missing.map((duty) => (
        <div key={duty}>
          {digestSha256 !== null && duties.includes(duty) ? (
            <PostForm
              name={`sign.${closedThrough}.${duty}`}
              summary={t.signAs(t.duties[duty] ?? duty)}
              button={t.sign}
              fields={[{ name: 'remarks', label: t.remarks, kind: 'text', isOptional: true }]}
              sentence={() => t.signSentence(digestSha256.slice(0, 12))}
              send={({ remarks }, headers) =>
                inside.periods[':throughOn'].signatures.$post(
                  {
                    param: { storehouse, throughOn: closedThrough },
                    json: { duty, digestSha256, remarks: String(remarks ?? '') },
                  },
                  { headers },
                )
              }
            />
          ) : (
            <State kind="watch" word={t.notSigned(t.duties[duty] ?? duty)} />
          )}
        </div>
      ))}
    </section>
  );
}

function Digest({ close }: { close: Closed }) {
  const { duties } = useHouse();
  return (
    <>
      <p className="digest">
        <code>{close.digestSha256}</code>
      </p>
      {duties.includes('treasurer') || duties.includes('reviewer') ? (
        <DigestText closedThrough={close.closedThrough} />
      ) : null}
    </>
  );
}

/** Whether the book still gives the digest, and the text of it, for those who may read every entry. */
function DigestText({ closedThrough }: { closedThrough: string }) {
  const t = useReviewText();
  const { storehouse } = useHouse();
  const reading = useQuery(digestQuery({ storehouse, throughOn: closedThrough }));
  return (
    <>
      <Loaded reading={reading}>
        {({ holds }) => (
          <p>
            <State kind={holds ? 'well' : 'wrong'} word={holds ? t.digestHolds : t.digestFails} />
          </p>
        )}
      </Loaded>
      <p>
        <a
          className="btn"
          href={`/api/storehouses/${storehouse}/periods/${closedThrough}/digest?format=text`}
          download
        >
          {t.takeText}
        </a>
      </p>
      <p>
        <a href={`/api/storehouses/${storehouse}/periods/${closedThrough}/digest?format=accounts`} download>
          {t.takeKinds}
        </a>
      </p>
      <p className="soft">{t.howSummed}</p>
    </>
  );
}
