import { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import type { HouseholdBalance } from '../books/owing-table.tsx';
import { PostForm } from '../books/post-form.tsx';
import { useBooksText } from '../books/words.ts';
import { explainedOf, tillMoneyOf, usePaymentFields } from './sent.ts';
import { usePaymentsText } from './words.ts';

const inside = api.storehouses[':storehouse'];
type Of = { households: readonly HouseholdBalance[] };

/** Pays a household's credit out. */
export function Refund({ households }: Of) {
  const words = usePaymentsText();
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const { amount, day, note, till } = usePaymentFields();
  const inCredit = households.filter(({ balanceMinorUnits }) => balanceMinorUnits < 0);
  if (inCredit.length === 0) return <p className="soft">{words.nobodyInCredit}</p>;
  const options = inCredit.map(({ householdId, household, balanceMinorUnits }) => ({
    value: householdId,
    name: words.inCredit(household, format.money(-balanceMinorUnits)),
  }));
  return (
    <PostForm
      name="refund"
      summary={words.refund}
      button={t.post}
      fields={[
        { name: 'householdId', label: t.household, kind: 'choice', options },
        amount,
        till(words.goesBy),
        day,
        note,
      ]}
      sentence={({ householdId }, money) => words.refundSentence(money, nameIn(inCredit, householdId))}
      send={({ householdId, ...body }, headers) =>
        inside.refunds.$post(
          { param: { storehouse }, json: { householdId: String(householdId), ...tillMoneyOf(body) } },
          { headers },
        )
      }
    />
  );
}

/** Lets the store fund cover what a household can't pay. */
export function CoverHardship({ households }: Of) {
  const words = usePaymentsText();
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const { amount, day, reason } = usePaymentFields();
  const owing = households.filter(({ balanceMinorUnits }) => balanceMinorUnits > 0);
  if (owing.length === 0) return <p className="soft">{words.nobodyOwes}</p>;
  const options = owing.map(({ householdId, household, balanceMinorUnits }) => ({
    value: householdId,
    name: words.owes(household, format.money(balanceMinorUnits)),
  }));
  return (
    <PostForm
      name="hardship"
      summary={words.hardship}
      button={t.post}
      fields={[{ name: 'householdId', label: t.household, kind: 'choice', options }, amount, day, reason]}
      sentence={({ householdId }, money) => words.hardshipSentence(money, nameIn(owing, householdId))}
      send={({ householdId, ...body }, headers) =>
        inside['hardship-covers'].$post(
          { param: { storehouse }, json: { householdId: String(householdId), ...explainedOf(body) } },
          { headers },
        )
      }
    />
  );
}

const nameIn = (households: readonly HouseholdBalance[], wanted: string | undefined): string =>
  households.find(({ householdId }) => householdId === wanted)?.household ?? '…';
