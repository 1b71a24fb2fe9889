import { useQuery } from '@tanstack/react-query';
import { statementQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { BuyParts } from './buy-parts.tsx';
import type { HouseholdStatement } from './statement-body.ts';
import { useStatementText } from './words.ts';

/** A statement that adds up by hand, from the balance brought forward to what is owed. */
export function Statement() {
  const t = useText();
  const { household } = useHouse();
  useTitle(t.statement);
  return household === null ? <h1>{t.noHousehold}</h1> : <OwnStatement />;
}

function OwnStatement() {
  const statement = useQuery(statementQuery(useOwnHousehold(), {}));
  return (
    <Loaded isPage reading={statement}>
      {(body) => <StatementSheet body={body} />}
    </Loaded>
  );
}

/** The sheet itself, as its household and the treasurer see it. */
export function StatementSheet({ body }: { body: HouseholdStatement }) {
  const words = useStatementText();
  const { format } = useHouse();
  const { closingMinorUnits, household } = body;
  const owed = format.money(Math.abs(closingMinorUnits));
  return (
    <>
      <h1>
        {closingMinorUnits > 0
          ? words.statementOwe(owed, body.currency)
          : closingMinorUnits < 0
            ? words.statementCredit(owed, body.currency)
            : words.statementEven}
      </h1>
      <p className="soft">
        {words.statementOf(household.name, household.seat)}
        <br />
        {words.fromTo(format.day(body.from), format.day(body.to))}
      </p>
      <Lines body={body} />
      <Deposits body={body} />
      {body.buys.map((buy) => (
        <BuyParts key={buy.buyId} buy={buy} />
      ))}
      <section className="stack">
        <h2>{words.howShared}</h2>
        <p>{words.tieBreak}</p>
        {body.ask.length > 0 ? <p>{words.whomToAsk(body.ask.join(', '))}</p> : null}
      </section>
      <PaperLinks
        papers={[
          {
            kind: 'statement',
            path: `households/${household.id}/statement/paper?from=${body.from}&to=${body.to}`,
          },
        ]}
      />
      <div className="actions no-print">
        <button type="button" className="btn" onClick={() => print()}>
          {words.print}
        </button>
      </div>
    </>
  );
}

function Lines({ body }: { body: HouseholdStatement }) {
  const t = useText();
  const words = useStatementText();
  const { format } = useHouse();
  if (body.lines.length === 0 && body.openingMinorUnits === 0) return <p>{words.statementEmpty}</p>;
  const amount = (minorUnits: number) => (minorUnits === 0 ? '' : format.money(minorUnits));
  const opening = {
    key: 'opening',
    cells: [
      <What key="what" words={words.broughtForward} when={format.day(body.from)} />,
      '',
      '',
      format.money(body.openingMinorUnits),
    ],
  };
  const lines = body.lines.map((line) => ({
    key: line.entryId + line.what,
    cells: [
      <What
        key="what"
        words={[words.entries[line.what] ?? line.what, line.buy ?? '', line.note].filter(Boolean).join(': ')}
        when={`${format.day(line.onDay)}, ${words.entryNo(line.entryNo)}`}
      />,
      amount(line.chargeMinorUnits),
      amount(line.paymentMinorUnits),
      format.money(line.balanceMinorUnits),
    ],
  }));
  const sum = {
    key: 'sum',
    isSum: true,
    cells: [
      words.chargesLessPayments,
      format.money(body.chargesMinorUnits),
      format.money(body.paymentsMinorUnits),
      format.money(body.closingMinorUnits),
    ],
  };
  return (
    <Ledger
      caption={t.statement}
      columns={[
        { name: words.what },
        { name: words.charge, isNumber: true },
        { name: words.paid, isNumber: true },
        { name: words.balance, isNumber: true },
      ]}
      rows={[opening, ...lines, sum]}
    />
  );
}

/** What a line is for, with its day and its entry beneath, so that its sums stand beside it on a phone too. */
const What = ({ words, when }: { words: string; when: string }) => (
  <>
    {words}
    <span className="soft mark block">{when}</span>
  </>
);

function Deposits({ body }: { body: HouseholdStatement }) {
  const t = useText();
  const words = useStatementText();
  const { format } = useHouse();
  if (body.deposits.length === 0) return <p className="soft">{words.noDeposits}</p>;
  return (
    <Ledger
      caption={t.depositsHeld}
      columns={[{ name: t.depositsHeld }, { name: t.amount, isNumber: true }]}
      rows={[
        ...body.deposits.map((deposit) => ({
          key: deposit.buyId,
          cells: [deposit.buy, format.money(deposit.heldMinorUnits)],
        })),
        { key: 'sum', isSum: true, cells: [t.together, format.money(body.depositsHeldMinorUnits)] },
      ]}
    />
  );
}
