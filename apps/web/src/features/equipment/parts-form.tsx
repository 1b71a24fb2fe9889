import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Check, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type Item, inside, readAnew } from './queries.ts';
import { moneyTyped, wholeTyped } from './typed.ts';
import { useEquipmentText } from './words.ts';

type PartTyped = typeof NEW_PART & { readonly id?: string };
const NEW_PART = { key: 0, name: '', pieces: '1', price: '', isCritical: false };

/** What belongs to a thing, part by part, which of them it never goes out without, and what each costs. */
export function PartsForm({ item }: { item: Item }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [isAsked, setIsAsked] = useState(false);
  const {
    draft: { rows },
    change: keep,
    forget,
  } = useDraft(
    `equipment-parts.${item.id}`,
    {
      rows: item.parts.map(
        (part, key): PartTyped => ({
          ...{ key, id: part.id, name: part.name, pieces: String(part.pieces) },
          ...{ price: format.money(part.valueMinorUnits), isCritical: part.isCritical },
        }),
      ),
    },
    { version: item.version, rows: { rows: NEW_PART } },
  );
  const change = (key: number, part: Partial<(typeof rows)[number]>) =>
    keep({ rows: rows.map((row) => (row.key === key ? { ...row, ...part } : row)) });
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
    onSuccess: () => {
      forget();
      return readAnew(queries);
    },
  });
  return (
    <Form
      onSend={() => {
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
              onClick={() => keep({ rows: rows.filter(({ key }) => key !== row.key) })}
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
            keep({
              rows: [...rows, { ...NEW_PART, key: Math.max(-1, ...rows.map(({ key }) => key)) + 1 }],
            })
          }
        >
          {words.addPart}
        </button>
        <button type="submit" className="btn go" disabled={saving.isPending}>
          {words.saveParts}
        </button>
      </div>
      <ProblemSaid error={saving.error} />
    </Form>
  );
}
