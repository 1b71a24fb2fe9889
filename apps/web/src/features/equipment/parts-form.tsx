import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Check, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { type Item, inside, readAnew } from './queries.ts';
import { moneyTyped, wholeTyped } from './typed.ts';
import { useEquipmentText } from './words.ts';

/** What belongs to a thing, part by part, which of them it never goes out without, and what each costs. */
export function PartsForm({ item }: { item: Item }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [isAsked, setIsAsked] = useState(false);
  const [rows, setRows] = useState(() =>
    item.parts.map((part, key) => ({
      ...{ key, id: part.id as string | undefined, name: part.name, pieces: String(part.pieces) },
      ...{ price: format.money(part.valueMinorUnits), isCritical: part.isCritical },
    })),
  );
  const change = (key: number, part: Partial<(typeof rows)[number]>) =>
    setRows(rows.map((row) => (row.key === key ? { ...row, ...part } : row)));
  const parts = rows.map(({ id, name, pieces, price, isCritical }) => ({
    ...(id === undefined ? {} : { id }),
    ...{
      name,
      isCritical,
      pieces: wholeTyped(pieces) ?? 0,
      valueMinorUnits: moneyTyped(price, format.currency),
    },
  }));
  const isFine = parts.every(
    ({ name, pieces, valueMinorUnits }) =>
      name.trim() !== '' && pieces > 0 && valueMinorUnits !== undefined && valueMinorUnits !== null,
  );
  const saving = useMutation({
    mutationFn: () =>
      ask(
        inside.equipment[':item'].parts.$put({
          param: { storehouse, item: item.id },
          json: { parts: parts.map((part) => ({ ...part, valueMinorUnits: part.valueMinorUnits ?? 0 })) },
        }),
      ),
    onSuccess: () => readAnew(queries),
  });
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setIsAsked(true);
        if (isFine) saving.mutate();
      }}
    >
      <h2>{words.parts}</h2>
      {rows.map((row, at) => (
        <div key={row.key} className="stack">
          <Field
            label={words.partName(at + 1)}
            value={row.name}
            onChange={(event) => change(row.key, { name: event.target.value })}
            problem={isAsked && row.name.trim() === '' ? words.name : undefined}
          />
          <div className="pair">
            <Field
              label={words.partCount(at + 1)}
              inputMode="numeric"
              value={row.pieces}
              onChange={(event) => change(row.key, { pieces: event.target.value })}
              problem={isAsked && !wholeTyped(row.pieces) ? words.numberProblem : undefined}
            />
            <Field
              label={words.partPrice(at + 1)}
              inputMode="decimal"
              value={row.price}
              onChange={(event) => change(row.key, { price: event.target.value })}
              problem={
                isAsked && typeof parts[at]?.valueMinorUnits !== 'number' ? words.moneyProblem : undefined
              }
            />
          </div>
          <Check
            label={words.partCritical(at + 1)}
            isOn={row.isCritical}
            onChange={(isCritical) => change(row.key, { isCritical })}
          />
          <div>
            <button
              type="button"
              className="btn quiet"
              onClick={() => setRows(rows.filter(({ key }) => key !== row.key))}
            >
              {words.dropPart(row.name || words.partName(at + 1))}
            </button>
          </div>
        </div>
      ))}
      <div className="actions">
        <button
          type="button"
          className="btn"
          onClick={() =>
            setRows([
              ...rows,
              {
                ...{ key: Math.max(-1, ...rows.map(({ key }) => key)) + 1, id: undefined, name: '' },
                ...{ pieces: '1', price: '', isCritical: false },
              },
            ])
          }
        >
          {words.addPart}
        </button>
        <button type="submit" className="btn go" disabled={saving.isPending}>
          {words.saveParts}
        </button>
      </div>
      <ProblemSaid error={saving.error} />
    </form>
  );
}
