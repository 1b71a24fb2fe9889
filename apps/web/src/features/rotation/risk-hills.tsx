import { useQuery } from '@tanstack/react-query';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import { placesQuery } from '../place/queries.ts';
import { hillMonths } from './hills.ts';
import { HillsPicture } from './hills-picture.tsx';
import type { Rotation, WhatIf } from './queries.ts';
import { useRotationText } from './words.ts';

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
  const months = hillMonths(risk.byMonth, other?.byMonth ?? [], format.today().slice(0, 7));
  return (
    <section>
      <h2>{words.riskTitle}</h2>
      <HillsPicture now={risk.byMonth} other={other?.byMonth ?? null} />
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
                  format.monthOf(month),
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
