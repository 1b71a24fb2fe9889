import { useQuery } from '@tanstack/react-query';
import { Choice, Field, type Problems } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { partsTyped } from '../../ui/parts-typed.ts';
import { type Treatment, treatmentsQuery } from '../treatment/queries.ts';
import { useShelfText } from './words.ts';

type Treating = { readonly treatment: string; readonly moisture: string };

/** What was chosen and typed, read; null when the moisture is no part of a hundred. Empty is unknown. */
export function readTreating({ treatment, moisture }: Treating) {
  const moistureTenths = partsTyped(moisture, 10);
  if (moistureTenths === undefined || (moistureTenths ?? 0) < 0 || (moistureTenths ?? 0) > 1000) return null;
  return { treatment: treatment === '' ? null : (treatment as Treatment['code']), moistureTenths };
}

/** What is done to the food as it is packed, with the cautions of what was chosen right beneath. */
export function TreatmentFields({
  draft,
  change,
  problems,
}: {
  draft: Treating;
  change: (part: Partial<Treating>) => void;
  problems: Problems;
}) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const { language } = format;
  const all = useQuery(treatmentsQuery({ storehouse })).data?.treatments ?? [];
  const chosen = all.find(({ code }) => code === draft.treatment);
  return (
    <>
      <Choice
        label={words.treatment}
        value={draft.treatment}
        options={[
          { value: '', name: words.treatmentUnknown },
          ...all.map(({ code, names }) => ({ value: code, name: names[language] })),
        ]}
        onChange={(treatment) => change({ treatment })}
      />
      {problems.treatment ? (
        <p className="wrong" role="alert">
          {problems.treatment}
        </p>
      ) : null}
      {chosen?.cautions.map(({ code, say, deferTo }) => (
        <p key={code} className="said watch-said">
          {say[language]} <span className="soft">{words.deferTo(deferTo[language])}</span>
        </p>
      ))}
      {chosen?.isOxygenFree || draft.moisture !== '' ? (
        <Field
          label={words.moisture}
          hint={words.moistureHint}
          inputMode="decimal"
          value={draft.moisture}
          onChange={(event) => change({ moisture: event.target.value })}
          problem={readTreating(draft) === null ? words.moistureProblem : problems.moistureTenths}
        />
      ) : null}
    </>
  );
}
