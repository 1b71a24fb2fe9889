import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { api, askOnce } from '../../api/client.ts';
import { CsvLink } from '../../ui/csv-link.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { BooksPage } from './books-page.tsx';
import { PostForm } from './post-form.tsx';
import { balancesQuery, writeOffsQuery } from './queries.ts';
import { useBooksText } from './words.ts';

const inside = api.storehouses[':storehouse'];

/** Debts that are given up, each with its reason; above the limit of the rules a second login agrees. */
export function WriteOffs() {
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(writeOffsQuery({ storehouse }));
  const balances = useQuery(balancesQuery({ storehouse }));
  return (
    <BooksPage title={t.places.writeOffs ?? ''}>
      <Loaded isPage reading={joined(reading, balances)}>
        {([{ writeOffs }, { balances: households }]) => {
          const nameOf = new Map(households.map((row) => [row.householdId, row.household]));
          const owing = households.filter(({ balanceMinorUnits }) => balanceMinorUnits > 0);
          return (
            <>
              <h1>{writeOffs.length === 0 ? t.noWriteOffs : t.writeOffsTitle(writeOffs.length)}</h1>
              <Searched
                items={writeOffs}
                wordsOf={({ householdId, reason }) => `${nameOf.get(householdId) ?? ''} ${reason}`}
              >
                {(shown) => (
                  <ul className="list">
                    {shown.map((row) => (
                      <li key={row.id} className="stack claim">
                        <div className="row">
                          <span>
                            <b>{nameOf.get(row.householdId) ?? ''}</b>
                            <br />
                            <span className="soft">{row.reason}</span>
                          </span>
                          <b className="num">{format.money(row.minorUnits)}</b>
                          <State
                            kind={row.state === 'asked' ? 'watch' : 'well'}
                            word={t.writeOffStates[row.state] ?? row.state}
                          />
                        </div>
                        {row.state === 'asked' ? <Answer id={row.id} /> : null}
                      </li>
                    ))}
                  </ul>
                )}
              </Searched>
              <p>
                <CsvLink list="write-offs">{t.download}</CsvLink>
              </p>
              {duties.includes('treasurer') && owing.length > 0 ? (
                <PostForm
                  name="write-off"
                  summary={t.writeOff}
                  button={t.writeOff}
                  fields={[
                    {
                      name: 'householdId',
                      label: t.household,
                      kind: 'choice',
                      options: owing.map(({ householdId, household, balanceMinorUnits }) => ({
                        value: householdId,
                        name: `${household}, ${format.money(balanceMinorUnits)}`,
                      })),
                    },
                    { name: 'minorUnits', label: t.amount, kind: 'money' },
                    { name: 'reason', label: t.reason, kind: 'text' },
                  ]}
                  sentence={(values, money) =>
                    t.writeOffSentence(money, nameOf.get(values.householdId ?? '') ?? '…')
                  }
                  send={({ householdId, minorUnits, reason }, headers) =>
                    inside['write-offs'].$post(
                      {
                        param: { storehouse },
                        json: {
                          householdId: String(householdId),
                          minorUnits: Number(minorUnits),
                          reason: String(reason),
                        },
                      },
                      { headers },
                    )
                  }
                />
              ) : null}
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

/** The second login agrees, or the first takes it back. */
function Answer({ id }: { id: string }) {
  const t = useBooksText();
  const client = useQueryClient();
  const { storehouse, duties } = useHouse();
  const param = { storehouse, writeOff: id };
  const answering = useMutation({
    mutationFn: (how: 'agreement' | 'withdrawal') =>
      askOnce(`write-off.${how}.${id}`, {}, (headers) =>
        how === 'agreement'
          ? inside['write-offs'][':writeOff'].agreement.$post({ param }, { headers })
          : inside['write-offs'][':writeOff'].withdrawal.$post({ param }, { headers }),
      ),
    onSuccess: () => client.invalidateQueries({ queryKey: ['books'] }),
  });
  return (
    <>
      <ProblemSaid error={answering.error} />
      <div className="actions">
        {duties.includes('coordinator') ? (
          <button type="button" className="btn" onClick={() => answering.mutate('agreement')}>
            {t.agree}
          </button>
        ) : null}
        {duties.includes('treasurer') ? (
          <button type="button" className="btn quiet" onClick={() => answering.mutate('withdrawal')}>
            {t.takeBack}
          </button>
        ) : null}
      </div>
    </>
  );
}
