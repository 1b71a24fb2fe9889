import { Field } from '../../ui/field.tsx';
import type { FactsDraft } from './plan-facts.ts';
import { usePlanText } from './words.ts';

/** Name, days and place of a buy, each with its problem at it. */
export function FactsFields({
  draft,
  change,
  wordsOf,
  isTried,
}: {
  draft: FactsDraft;
  change: (part: Partial<FactsDraft>) => void;
  wordsOf: (field: string) => string | undefined;
  /** Whether it was sent before all days were chosen. */
  isTried: boolean;
}) {
  const words = usePlanText();
  const dayMissing = (day: string) => (isTried && day === '' ? words.dayProblem : undefined);
  return (
    <>
      <Field
        label={words.name}
        hint={words.nameHint}
        value={draft.name}
        onChange={(event) => change({ name: event.target.value })}
        problem={wordsOf('name')}
      />
      <div className="pair roomy">
        <Field
          label={words.closesOn}
          type="date"
          value={draft.closesOn}
          onChange={(event) => change({ closesOn: event.target.value })}
          problem={dayMissing(draft.closesOn) ?? wordsOf('gatheringClosesAt')}
        />
        <Field
          label={words.closesAt}
          type="time"
          value={draft.closesAt}
          onChange={(event) => change({ closesAt: event.target.value })}
        />
      </div>
      <div className="pair roomy">
        <Field
          label={words.orderOn}
          type="date"
          value={draft.orderOn}
          onChange={(event) => change({ orderOn: event.target.value })}
          problem={dayMissing(draft.orderOn) ?? wordsOf('orderOn')}
        />
        <Field
          label={words.landingOn}
          hint={words.landingOnHint}
          type="date"
          value={draft.landingOn}
          onChange={(event) => change({ landingOn: event.target.value })}
          problem={wordsOf('landingOn')}
        />
      </div>
      <Field
        label={words.landingPlace}
        hint={words.landingPlaceHint}
        value={draft.landingPlace}
        onChange={(event) => change({ landingPlace: event.target.value })}
        problem={wordsOf('landingPlace')}
      />
    </>
  );
}
