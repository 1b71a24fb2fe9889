import { useState } from 'react';
import { Choice, Field } from '../../ui/field.tsx';
import type { Columns, Preview } from './queries.ts';
import { columnsOf, ROLES, type Role, rolesOf } from './roles.ts';
import { useBankText } from './words.ts';

/** The first rows of a file with what each column is above it; every change is read again at once. */
export function ColumnsForm({
  preview,
  onColumns,
}: {
  preview: Preview;
  onColumns: (columns: Columns) => void;
}) {
  const words = useBankText();
  const width = Math.max(1, ...preview.rows.map((row) => row.length));
  const [roles, setRoles] = useState<readonly Role[]>(() => rolesOf(preview.columns, width));
  const [rest, setRest] = useState(() => ({
    firstRow: preview.columns?.firstRow ?? 1,
    dayOrder: preview.columns?.dayOrder ?? ('ymd' as const),
    decimalMark: preview.columns?.decimalMark ?? ('.' as const),
  }));
  const change = (nextRoles: readonly Role[], nextRest: typeof rest) => {
    setRoles(nextRoles);
    setRest(nextRest);
    const columns = columnsOf(nextRoles, nextRest);
    if (columns) onColumns(columns);
  };
  const changeRole = (at: number, role: Role) =>
    change(
      roles.map((one, place) => (place === at ? role : one === role && role !== 'words' ? 'none' : one)),
      rest,
    );
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard */}
      <section className="scroll bank-columns" tabIndex={0} aria-label={words.file}>
        <table>
          <thead>
            <tr>
              {roles.map((role, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column is known by its place alone
                <th key={at} scope="col">
                  <Choice
                    label={words.column(at + 1)}
                    value={role}
                    options={ROLES.map((value) => ({ value, name: words.roles[value] }))}
                    onChange={(value) => changeRole(at, value as Role)}
                  />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {preview.rows.map((row, rowAt) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place alone
              <tr key={rowAt} className={rowAt < rest.firstRow ? 'above' : undefined}>
                {roles.map((_, at) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a column is known by its place alone
                  <td key={at}>{row[at] ?? ''}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {columnsOf(roles, rest) ? null : (
        <p className="said watch-said" role="status">
          {words.rolesMissing}
        </p>
      )}
      <div className="pair roomy">
        <Choice
          label={words.dayOrder}
          value={rest.dayOrder}
          options={(['ymd', 'dmy', 'mdy'] as const).map((value) => ({ value, name: words.dayOrders[value] }))}
          onChange={(dayOrder) => change(roles, { ...rest, dayOrder: dayOrder as Columns['dayOrder'] })}
        />
        <Choice
          label={words.decimalMark}
          value={rest.decimalMark}
          options={(['.', ','] as const).map((value) => ({ value, name: words.decimalMarks[value] }))}
          onChange={(mark) => change(roles, { ...rest, decimalMark: mark as Columns['decimalMark'] })}
        />
        <Field
          label={words.firstRow}
          type="number"
          min={1}
          max={1001}
          value={rest.firstRow + 1}
          onChange={(event) =>
            change(roles, { ...rest, firstRow: Math.max(0, Math.min(1000, Number(event.target.value) - 1)) })
          }
        />
      </div>
    </>
  );
}
