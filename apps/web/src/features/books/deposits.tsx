import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { api } from '../../api/client.ts';
import { buysQuery } from '../../api/queries.ts';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { depositsQuery } from '../buy/run-queries.ts';
import { BooksPage } from './books-page.tsx';
import { HeldDeposits } from './held-deposits.tsx';
import { PostForm } from './post-form.tsx';
import { heldDepositsQuery } from './queries.ts';
import { isTill, useTills } from './tills.ts';
import { useBooksText } from './words.ts';

const buys = api.storehouses[':storehouse'].buys[':buy'];

/** A buy that ended takes none any more; what it holds still stands above the choice of buys. */
const WITHOUT_DEPOSITS: ReadonlySet<string> = new Set(['planning', 'closed', 'called-off']);

/** Deposits: what is held in all, and buy by buy who was asked, who paid, who was let off and who still has to. */
export function DepositsPage() {
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const held = useQuery(heldDepositsQuery({ storehouse }));
  const all = useQuery(buysQuery({ storehouse }));
  const [chosen, setChosen] = useState<string | null>(null);
  return (
    <BooksPage title={t.deposits}>
      <Loaded isPage reading={joined(held, all)}>
        {([body, { buys: listed }]) => {
          const withDeposits = listed.filter(({ stage }) => !WITHOUT_DEPOSITS.has(stage));
          const open = withDeposits.find(({ stage }) => stage === 'fixed' || stage === 'ordered');
          const inAll = body.heldMinorUnits + body.loanHeldMinorUnits;
          const buy = chosen ?? open?.id ?? withDeposits[0]?.id;
          return (
            <>
              <h1>{inAll === 0 ? t.noDeposits : t.depositsTitle(format.money(inAll))}</h1>
              {inAll === 0 ? null : <HeldDeposits />}
              {body.deposits
                .filter(({ isOverdue }) => isOverdue)
                .map((deposit) => (
                  <div key={deposit.buyId + deposit.householdId} className="stack claim">
                    <p className="row">
                      <span>
                        {deposit.household}, {deposit.buy}: {format.money(deposit.heldMinorUnits)}
                      </span>
                      <State kind="wrong" word={t.overdueDeposit} />
                    </p>
                    {duties.includes('treasurer') ? <GiveBack {...deposit} /> : null}
                  </div>
                ))}
              {buy === undefined ? null : (
                <>
                  <Choice
                    label={t.buy}
                    value={buy}
                    options={withDeposits.map(({ id, name }) => ({ value: id, name }))}
                    onChange={setChosen}
                  />
                  <DepositsOfBuy key={buy} buy={buy} />
                </>
              )}
              <p>
                <CsvLink list="deposits-held">{t.download}</CsvLink>
              </p>
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

type DepositRow = {
  readonly householdId: string;
  readonly household: string;
  readonly isSettled: boolean;
  readonly heldMinorUnits?: number | undefined;
  readonly askedMinorUnits?: number | null | undefined;
  readonly isWaived?: boolean | undefined;
};

function DepositsOfBuy({ buy }: { buy: string }) {
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(depositsQuery({ storehouse, buy }));
  return (
    <Loaded reading={reading}>
      {({ deposits }) =>
        deposits.length === 0 ? (
          <p>{t.noneAsked}</p>
        ) : (
          <ul className="list">
            {deposits.map((row: DepositRow) => (
              <li key={row.householdId} className="stack claim">
                <div className="row">
                  <b>{row.household}</b>
                  <span>
                    {t.heldOfAsked(
                      format.money(row.heldMinorUnits ?? 0),
                      row.askedMinorUnits == null ? null : format.money(row.askedMinorUnits),
                    )}
                  </span>
                  <State
                    kind={row.isSettled ? 'well' : 'watch'}
                    word={row.isWaived ? t.waived : row.isSettled ? t.settled : t.outstanding}
                  />
                </div>
                {duties.includes('treasurer') ? <DepositActs buy={buy} row={row} /> : null}
              </li>
            ))}
          </ul>
        )
      }
    </Loaded>
  );
}

function DepositActs({ buy, row }: { buy: string; row: DepositRow }) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const tills = useTills();
  const param = { storehouse, buy };
  const { householdId, heldMinorUnits = 0, askedMinorUnits = 0 } = row;
  const missing = Math.max(0, (askedMinorUnits ?? 0) - heldMinorUnits);
  return (
    <>
      {row.isSettled ? null : (
        <>
          <PostForm
            name={`deposit.${buy}.${householdId}`}
            summary={t.takeDeposit}
            button={t.post}
            fields={[
              { name: 'minorUnits', label: t.received, kind: 'money', start: format.money(missing) },
              { name: 'till', label: t.cameBy, kind: 'choice', options: tills },
            ]}
            sentence={(_, money) => t.depositSentence(money, row.household)}
            send={({ minorUnits, till }, headers) =>
              buys.deposits.$post(
                {
                  param,
                  json: { householdId, minorUnits: Number(minorUnits), ...(isTill(till) ? { till } : {}) },
                },
                { headers },
              )
            }
          />
          <PostForm
            name={`waive.${buy}.${householdId}`}
            summary={t.waive}
            button={t.waive}
            fields={[{ name: 'reason', label: t.reason, kind: 'text' }]}
            sentence={() => t.waiveSentence(row.household)}
            send={({ reason }, headers) =>
              buys.deposits.waivers.$post(
                { param, json: { householdId, reason: String(reason) } },
                { headers },
              )
            }
          />
        </>
      )}
      {heldMinorUnits > 0 ? <GiveBack buyId={buy} {...row} heldMinorUnits={heldMinorUnits} /> : null}
    </>
  );
}

type Held = {
  readonly buyId: string;
  readonly householdId: string;
  readonly household: string;
  readonly heldMinorUnits: number;
};

function GiveBack({ buyId, householdId, household, heldMinorUnits }: Held) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const tills = useTills(t.toBalance);
  return (
    <PostForm
      name={`refund.${buyId}.${householdId}`}
      summary={t.giveBack}
      button={t.post}
      fields={[
        { name: 'minorUnits', label: t.amount, kind: 'money', start: format.money(heldMinorUnits) },
        { name: 'till', label: t.goesBy, kind: 'choice', options: tills, isOptional: true },
      ]}
      sentence={(_, money) => t.refundSentence(money, household)}
      send={({ minorUnits, till }, headers) =>
        buys.deposits.refunds.$post(
          {
            param: { storehouse, buy: buyId },
            json: {
              householdId,
              minorUnits: Number(minorUnits),
              ...(isTill(till) ? { till } : { toBalance: true }),
            },
          },
          { headers },
        )
      }
    />
  );
}
