import { Field } from '../../ui/field.tsx';
import type { QuoteDraft, StepDraft } from './quote-draft.ts';
import { useQuotesText } from './words.ts';

type FreightDraft = Pick<QuoteDraft, 'steps' | 'freeFrom'>;

/** What delivery costs, by the weight of the whole order, and from which goods on it is free. */
export function FreightFields({
  draft,
  change,
  problemAt,
}: {
  draft: FreightDraft;
  change: (part: Partial<FreightDraft>) => void;
  problemAt: (field: string) => string | undefined;
}) {
  const words = useQuotesText();
  const edit = (at: number, part: Partial<StepDraft>) =>
    change({ steps: draft.steps.map((step, place) => (place === at ? { ...step, ...part } : step)) });
  return (
    <section className="stack">
      <h3>{words.freight}</h3>
      <p className="soft">{words.freightWords}</p>
      {draft.steps.map((step, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a step is its place in the form
        <div key={at} className="pair roomy">
          <Field
            label={words.stepFrom}
            value={step.from}
            onChange={(event) => edit(at, { from: event.target.value })}
            problem={problemAt(`freightSteps.${at}.fromGrams`)}
          />
          <Field
            label={words.stepPrice}
            inputMode="decimal"
            value={step.price}
            onChange={(event) => edit(at, { price: event.target.value })}
            problem={problemAt(`freightSteps.${at}.minorUnits`)}
          />
          <div>
            <button
              type="button"
              className="btn quiet"
              onClick={() => change({ steps: draft.steps.filter((_, place) => place !== at) })}
            >
              {words.removeStep(at + 1)}
            </button>
          </div>
        </div>
      ))}
      <div>
        <button
          type="button"
          className="btn"
          onClick={() =>
            change({ steps: [...draft.steps, { from: draft.steps.length === 0 ? '0' : '', price: '' }] })
          }
        >
          {words.addStep}
        </button>
      </div>
      <Field
        label={words.freeFrom}
        hint={words.freeHint}
        inputMode="decimal"
        value={draft.freeFrom}
        onChange={(event) => change({ freeFrom: event.target.value })}
        problem={problemAt('freightFreeFromMinorUnits')}
      />
    </section>
  );
}
