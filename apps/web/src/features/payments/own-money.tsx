import { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import type { HouseholdBalance } from '../books/owing-table.tsx';
import { type PostBody, PostForm } from '../books/post-form.tsx';
import { useBooksText } from '../books/words.ts';
import type { SupplierStanding } from './queries.ts';
import { explainedOf, moneyOf, tillMoneyOf, usePaymentFields } from './sent.ts';
import { usePaymentsText } from './words.ts';

const inside = api.storehouses[':storehouse'];

type Sending = Parameters<typeof PostForm>[0]['send'];

/** A payment with an amount, a day and a note; where it goes through bank or tin, that is asked too. */
function PlainMoney(props: {
  name: string;
  summary: string;
  sentence: (money: string) => string;
  tillLabel?: string;
  send: Sending;
}) {
  const t = useBooksText();
  const { amount, day, note, till } = usePaymentFields();
  const { name, summary, sentence, tillLabel, send } = props;
  return (
    <PostForm
      name={name}
      summary={summary}
      button={t.post}
      fields={[amount, ...(tillLabel === undefined ? [] : [till(tillLabel)]), day, note]}
      sentence={(_, money) => sentence(money)}
      send={send}
    />
  );
}

export function ChargeBank() {
  const words = usePaymentsText();
  const param = { storehouse: useHouse().storehouse };
  return (
    <PlainMoney
      name="bank-charge"
      summary={words.bankCharge}
      sentence={words.bankChargeSentence}
      send={(body, headers) => inside['bank-charges'].$post({ param, json: moneyOf(body) }, { headers })}
    />
  );
}

export function BankCash() {
  const words = usePaymentsText();
  const param = { storehouse: useHouse().storehouse };
  return (
    <PlainMoney
      name="bank-cash"
      summary={words.bankCash}
      sentence={words.bankCashSentence}
      send={(body, headers) => inside['cash-bankings'].$post({ param, json: moneyOf(body) }, { headers })}
    />
  );
}

export function ReceiveFund() {
  const words = usePaymentsText();
  const param = { storehouse: useHouse().storehouse };
  return (
    <PlainMoney
      name="fund-receipt"
      summary={words.gift}
      sentence={words.giftSentence}
      tillLabel={words.cameBy}
      send={(body, headers) => inside['fund-receipts'].$post({ param, json: tillMoneyOf(body) }, { headers })}
    />
  );
}

export function SpendFund() {
  const words = usePaymentsText();
  const param = { storehouse: useHouse().storehouse };
  return (
    <PlainMoney
      name="fund-spending"
      summary={words.spend}
      sentence={words.spendSentence}
      tillLabel={words.goesBy}
      send={(body, headers) =>
        inside['fund-spendings'].$post({ param, json: tillMoneyOf(body) }, { headers })
      }
    />
  );
}

type Parties = {
  households: readonly HouseholdBalance[];
  suppliers: readonly SupplierStanding[];
};

/** A balance brought over; the bank, the tin, a household or a supplier, each by one choice. */
export function OpenBalance({ households, suppliers }: Parties) {
  const words = usePaymentsText();
  const t = useBooksText();
  const { storehouse } = useHouse();
  const { amount, day, reason } = usePaymentFields();
  const options = [
    { value: 'bank', name: words.bank },
    { value: 'cash', name: words.tin },
    ...households.map((row) => ({ value: `household ${row.householdId}`, name: row.household })),
    ...suppliers.map((row) => ({ value: `supplier ${row.supplierId}`, name: row.supplier })),
  ];
  const ways = [
    { value: 'above', name: words.above },
    { value: 'below', name: words.below },
  ];
  return (
    <PostForm
      name="opening-balance"
      summary={words.opening}
      button={t.post}
      fields={[
        { name: 'whose', label: words.whose, kind: 'choice', options },
        { name: 'way', label: words.way, kind: 'choice', options: ways },
        amount,
        day,
        reason,
      ]}
      sentence={({ whose, way }, money) =>
        words.openingSentence(
          money,
          options.find(({ value }) => value === whose)?.name ?? '…',
          way !== 'below',
        )
      }
      send={(body, headers) =>
        inside['opening-balances'].$post({ param: { storehouse }, json: openingOf(body) }, { headers })
      }
    />
  );
}

const KINDS = ['bank', 'cash', 'household', 'supplier'] as const;

function openingOf(body: PostBody) {
  const [kind, id] = String(body.whose).split(' ');
  const { minorUnits, ...rest } = explainedOf(body);
  return {
    ...rest,
    of: KINDS.find((known) => known === kind) ?? 'bank',
    balanceMinorUnits: body.way === 'below' ? -minorUnits : minorUnits,
    ...(kind === 'household' && id ? { householdId: id } : {}),
    ...(kind === 'supplier' && id ? { supplierId: id } : {}),
  };
}
