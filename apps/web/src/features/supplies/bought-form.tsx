import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { useDraft } from '../../ui/use-draft.ts';
import { suppliersQuery } from '../buy/run-queries.ts';
import { moneyTyped } from '../equipment/typed.ts';
import { PurchasesHere } from './purchases-here.tsx';
import type { Purchase, Supply } from './queries.ts';
import { usePurchases } from './use-purchases.ts';
import { useSuppliesText } from './words.ts';

export type Bought = {
  readonly supplyId: string;
  readonly supply: Supply;
  readonly packsToBuy: number;
  readonly costMinorUnits: number | null;
};

type Rows = Readonly<Record<string, string>>;

/** What has a last good day on its pack; a can or a lid has none. */
const SPOILS = ['absorber', 'dry-ice', 'glove', 'label', 'other'];

/** What was paid for what was ticked, and who paid. It is kept on the phone first. */
export function BoughtForm({
  name,
  lines,
  onWritten,
}: {
  /** Of its draft: what was paid for so and so many packs is not what was paid for others. */
  name: string;
  lines: readonly Bought[];
  onWritten: () => void;
}) {
  const t = useSuppliesText();
  const { format, household } = useHouse();
  const { write } = usePurchases();
  const {
    draft: { who, paid, good },
    change,
    reset,
  } = useDraft(
    name,
    { who: 'household', paid: {} as Rows, good: {} as Rows },
    { rows: { paid: '', good: '' } },
  );
  const [isTried, setIsTried] = useState(false);
  const typedOf = ({ supplyId, costMinorUnits }: Bought) =>
    paid[supplyId] ?? (costMinorUnits === null ? '' : format.money(costMinorUnits));
  const read = lines.map((line) => ({ line, minorUnits: moneyTyped(typedOf(line), format.currency) }));
  const payer = payerOf(who, household);
  const send = () => {
    setIsTried(true);
    if (payer === null || read.some(({ minorUnits }) => typeof minorUnits !== 'number')) return;
    write({
      paidBy: payer,
      lines: read.map(({ line, minorUnits }) => ({
        supplyId: line.supplyId,
        pieces: line.packsToBuy * line.supply.packPieces,
        minorUnits: minorUnits ?? 0,
        useBy: good[line.supplyId] || null,
      })),
    });
    setIsTried(false);
    reset();
    onWritten();
  };
  return (
    <>
      <PurchasesHere />
      {lines.length === 0 ? null : (
        <Form label={t.bought} onSend={send}>
          <h2>{t.bought}</h2>
          <WhoPaid who={who} onChange={(who) => change({ who })} />
          {read.map(({ line, minorUnits }) => (
            <Field
              key={line.supplyId}
              label={t.paidFor(line.supply.name, format.count(line.packsToBuy * line.supply.packPieces))}
              inputMode="decimal"
              value={typedOf(line)}
              problem={isTried && typeof minorUnits !== 'number' ? t.moneyProblem : undefined}
              onChange={(event) => change({ paid: { ...paid, [line.supplyId]: event.target.value } })}
            />
          ))}
          {lines
            .filter(({ supply }) => SPOILS.includes(supply.kind))
            .map(({ supplyId, supply }) => (
              <Field
                key={supplyId}
                label={t.lastGoodDay(supply.name)}
                type="date"
                value={good[supplyId] ?? ''}
                onChange={(event) => change({ good: { ...good, [supplyId]: event.target.value } })}
              />
            ))}
          <p className="soft">{t.boughtSays}</p>
          <button type="submit" className="btn">
            {t.writeItDown}
          </button>
        </Form>
      )}
    </>
  );
}

const payerOf = (who: string, household: string | null): Purchase['paidBy'] | null => {
  if (who === 'household') return household === null ? null : { who, householdId: household };
  if (who === 'bank' || who === 'cash') return { who: 'till', till: who };
  return who === 'nobody' ? { who } : { who: 'supplier', supplierId: who };
};

/** The bank and the tin are the treasurer's; a supplier waits for its money. */
function WhoPaid({ who, onChange }: { who: string; onChange: (who: string) => void }) {
  const t = useSuppliesText();
  const { storehouse, householdName, duties } = useHouse();
  const suppliers = useQuery(suppliersQuery({ storehouse }));
  const tills = duties.includes('treasurer')
    ? [
        { value: 'bank', name: t.bank },
        { value: 'cash', name: t.tin },
      ]
    : [];
  return (
    <Choice
      label={t.whoPaid}
      value={who}
      options={[
        { value: 'household', name: t.ownHousehold(householdName) },
        ...tills,
        ...(suppliers.data ?? []).map(({ id, name }) => ({ value: id, name })),
        { value: 'nobody', name: t.nobody },
      ]}
      onChange={onChange}
    />
  );
}
