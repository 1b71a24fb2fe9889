import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { useDraft } from '../../ui/use-draft.ts';
import { MoistureFields } from '../moisture/moisture-fields.tsx';
import { moistureStart, readingsTyped } from '../moisture/moisture-typed.ts';
import type { Bag } from './landing-body.ts';
import { gramsOf, padOf, weighedBy } from './reading.ts';
import { scaleText } from './scale.ts';
import { scaleUnit } from './scale-unit.ts';
import type { Landing } from './use-landing.ts';
import { useLandingText } from './words.ts';

/** A bag is weighed once; again only with a reason, which stands in the book beside the new weight. */
export function WeighAgain({ landing, bag }: { landing: Landing; bag: Bag }) {
  const t = useLandingText();
  const { format } = useHouse();
  const unit = scaleUnit() ?? format.massUnit;
  const tare = bag.tareGrams === null ? padOf(unit).tare : `${bag.tareGrams} g`;
  const { draft, change, reset } = useDraft(`weigh.${bag.id}`, {
    text: '',
    tare,
    reason: '',
    ...moistureStart(bag.moistureTenthsPercent),
  });
  const weighed = weighedBy({ ...draft, unit }, bag.declaredGrams);
  const isAgain = bag.weighedAt !== null || bag.leftGrams !== bag.netGrams;
  const readings = isAgain ? readingsTyped(draft) : null;
  const isWaiting = landing.queue.written.some(({ act }) => act.kind === 'weight' && act.bagId === bag.id);
  if (isWaiting) return null;
  const mass = (grams: number) => `${scaleText(grams, unit, format.language)} ${unit}`;
  const textProblem = draft.text !== '' && gramsOf(draft.text, unit) === null ? t.massProblem : undefined;
  return (
    <details>
      <summary>{isAgain ? t.weighAgain : t.weighNow}</summary>
      <Form
        isTight
        onSend={() => {
          if (!weighed || readings === undefined) return;
          const { grossGrams, tareGrams } = weighed;
          const weight = {
            ...{ version: bag.version, grossGrams, tareGrams, reason: draft.reason.trim() },
            ...(readings ? { moisture: readings } : {}),
          };
          landing.write({ kind: 'weight', bagId: bag.id, bagCode: bag.bagCode, weight, unit });
          reset({ text: '', tare, reason: '' });
        }}
      >
        <div className="pair">
          <Field
            label={`${t.onTheScale} (${unit})`}
            inputMode="decimal"
            value={draft.text}
            problem={textProblem}
            onChange={(event) => change({ text: event.target.value })}
          />
          <Field
            label={t.tare}
            value={draft.tare}
            onChange={(event) => change({ tare: event.target.value })}
          />
        </div>
        {isAgain ? (
          <Field
            label={t.whyAgain}
            value={draft.reason}
            problem={weighed && draft.reason.trim() === '' ? t.reasonNeeded : undefined}
            onChange={(event) => change({ reason: event.target.value })}
          />
        ) : null}
        {isAgain ? (
          <MoistureFields
            draft={draft}
            onChange={change}
            weighing={
              weighed ? { bookedGrams: bag.leftGrams, weighedGrams: weighed.received.weighedGrams } : null
            }
          />
        ) : null}
        {weighed ? <p>{t.weighPosts(mass(weighed.received.weighedGrams), mass(bag.leftGrams))}</p> : null}
        <button
          type="submit"
          className="btn"
          disabled={!weighed || readings === undefined || (isAgain && draft.reason.trim() === '')}
        >
          {t.writeWeight}
        </button>
      </Form>
    </details>
  );
}
