import { useQuery } from '@tanstack/react-query';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import { placesQuery } from '../place/queries.ts';
import { type HillMonth, hillMonths } from './hills.ts';
import type { Rotation, WhatIf } from './queries.ts';
import { useRotationText } from './words.ts';

const [WIDTH, HEIGHT, FOOT] = [320, 150, 22];

/** Picture 4: what passes its day uneaten, month by month, and a second line for what would be otherwise. */
export function RiskHills({
  rotation: { risk, whatIf: other },
  whatIf,
  onWhatIf,
  isStore = false,
}: {
  rotation: Rotation;
  whatIf: WhatIf;
  onWhatIf: (whatIf: WhatIf) => void;
  /** Common stock is eaten by nobody, and stands in the store’s own places. */
  isStore?: boolean;
}) {
  const words = useRotationText();
  const { storehouse, format } = useHouse();
  const places = useQuery(placesQuery({ storehouse })).data?.places ?? [];
  if (risk.grams === 0) return null;
  const months = hillMonths(risk.byMonth, other?.byMonth ?? []);
  return (
    <section>
      <h2>{words.riskTitle}</h2>
      <Hills months={months} hasOther={other !== null} />
      <Choice
        label={words.whatIf}
        value={whatIf}
        options={[
          { value: 'none', name: words.asItIs },
          ...(isStore ? [] : [{ value: 'faster', name: words.eatFaster }]),
          { value: 'repack', name: words.repack },
          { value: 'give', name: words.give },
          ...places
            .filter(({ isStores }) => isStores || !isStore)
            .map(({ id, name }) => ({ value: `to ${id}`, name: words.moveTo(name) })),
        ]}
        onChange={(value) => onWhatIf(value as WhatIf)}
      />
      <p role="status">
        {other === null
          ? words.asked
          : words.saves(
              format.mass(other.savedGrams),
              format.mass(other.grams),
              format.mass(other.givenGrams),
            )}
      </p>
      <AsTable>
        <Ledger
          caption={words.riskTitle}
          columns={[
            { name: words.month },
            { name: words.ifNothing, isNumber: true },
            ...(other === null ? [] : [{ name: words.ifSo, isNumber: true }]),
          ]}
          rows={[
            ...months
              .filter(({ grams, otherGrams }) => grams > 0 || otherGrams > 0)
              .map(({ month, grams, otherGrams }) => ({
                key: month,
                cells: [
                  `${format.monthName(`${month}-01`)} ${month.slice(0, 4)}`,
                  format.mass(grams),
                  ...(other === null ? [] : [format.mass(otherGrams)]),
                ],
              })),
            {
              key: 'sum',
              isSum: true,
              cells: [
                words.inAll,
                format.mass(risk.grams),
                ...(other === null ? [] : [format.mass(other.grams)]),
              ],
            },
          ]}
        />
        <Ledger
          caption={words.byPlace}
          columns={[{ name: words.place }, { name: words.ifNothing, isNumber: true }]}
          rows={risk.byPlace.map(({ place, atRiskGrams }) => ({
            key: place?.id ?? '',
            cells: [place?.name ?? words.noPlace, format.mass(atRiskGrams)],
          }))}
        />
      </AsTable>
    </section>
  );
}

/** Height at a month's middle is its grams, with straight lines between. */
function Hills({ months, hasOther }: { months: readonly HillMonth[]; hasOther: boolean }) {
  const words = useRotationText();
  const { format } = useHouse();
  const most = Math.max(...months.flatMap(({ grams, otherGrams }) => [grams, otherGrams]), 1);
  const step = WIDTH / (months.length + 1);
  const x = (at: number) => (at + 1) * step;
  const y = (grams: number) => HEIGHT - FOOT - (grams / most) * (HEIGHT - FOOT - 18);
  const line = (of: 'grams' | 'otherGrams') =>
    `M0 ${HEIGHT - FOOT}${months.map((month, at) => `L${x(at)} ${y(month[of])}`).join('')}L${WIDTH} ${HEIGHT - FOOT}`;
  const peakAt = months.findIndex(({ grams }) => grams === Math.max(...months.map((one) => one.grams)));
  const peak = months[peakAt];
  const nameOfMonth = (month: string) =>
    month === '' ? '' : `${format.monthName(`${month}-01`)} ${month.slice(0, 4)}`;
  const [first, last] = [months[0]?.month ?? '', months.at(-1)?.month ?? ''];
  return (
    <svg className="hills" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words.riskTitle}>
      <pattern
        id="hill-hatch"
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width="6" height="6" fill="var(--cloth)" />
        <path d="M0 0V6" stroke="var(--ink)" strokeWidth="1" />
      </pattern>
      <path d={line('grams')} fill="url(#hill-hatch)" stroke="var(--ink)" strokeWidth="1.5" />
      {hasOther ? (
        <path
          d={line('otherGrams')}
          fill="none"
          stroke="var(--accent)"
          strokeWidth="2.5"
          strokeDasharray="6 4"
        />
      ) : null}
      <path d={`M0 ${HEIGHT - FOOT}H${WIDTH}`} stroke="var(--ink)" />
      {peak ? (
        <text
          x={Math.min(Math.max(x(peakAt), 44), WIDTH - 44)}
          y={12}
          textAnchor="middle"
          fontSize="13"
          fill="var(--ink)"
        >
          {format.mass(peak.grams)}
        </text>
      ) : null}
      <text x="0" y={HEIGHT - 5} fontSize="13" fill="var(--soft)">
        {nameOfMonth(first)}
      </text>
      {last === first ? null : (
        <text x={WIDTH} y={HEIGHT - 5} textAnchor="end" fontSize="13" fill="var(--soft)">
          {nameOfMonth(last)}
        </text>
      )}
    </svg>
  );
}
