import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { heldDepositsQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** Every deposit that the storehouse holds, for a buy or for a thing that is out, with whose it is and what they add up to. */
export function HeldDeposits() {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(heldDepositsQuery({ storehouse }));
  return (
    <Loaded reading={reading}>
      {({ deposits, loanDeposits, heldMinorUnits, loanHeldMinorUnits }) => {
        const rows = [
          ...deposits.map((row) => ({ ...row, heldFor: row.buy, overdue: t.overdueDeposit })),
          ...loanDeposits.map((row) => ({
            ...row,
            heldFor: `${row.item} ${row.unitNo}`,
            overdue: t.overdueLoanDeposit,
          })),
        ];
        if (rows.length === 0) return <p className="soft">{t.noDeposits}</p>;
        return (
          <Ledger
            caption={t.deposits}
            columns={[
              { name: t.household },
              { name: t.heldFor },
              { name: t.held, isNumber: true },
              { name: t.state },
            ]}
            rows={[
              ...rows.map(({ accountId, household, heldFor, heldMinorUnits: held, isOverdue, overdue }) => ({
                key: accountId,
                cells: [
                  <Link
                    key="deposit"
                    to="/s/$storehouse/books/accounts/$account"
                    params={{ storehouse, account: accountId }}
                  >
                    {household}
                  </Link>,
                  heldFor,
                  format.money(held),
                  isOverdue ? <State key="state" kind="wrong" word={overdue} /> : '',
                ],
              })),
              {
                key: 'sum',
                isSum: true,
                cells: [t.all, '', format.money(heldMinorUnits + loanHeldMinorUnits), ''],
              },
            ]}
          />
        );
      }}
    </Loaded>
  );
}
