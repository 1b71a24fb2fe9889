import { Choice, Field, type Problems } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import type { BuyLineBody } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import type { Wish } from './line-facts.ts';
import { usePledgeText } from './words.ts';

type LimitsProps = {
  draft: Wish;
  change: (part: Partial<Wish>) => void;
  problems: Problems;
  unit: 'lb' | 'kg';
  /** The other foods of the buy, one of which may serve instead. */
  others: readonly BuyLineBody[];
  isCeilingWrong: boolean;
};

/** The highest price that a household would pay, and what it would rather have above that. */
export function PledgeLimits({ draft, change, problems, unit, others, isCeilingWrong }: LimitsProps) {
  const words = usePledgeText();
  const { format } = useHouse();
  return (
    <details open={draft.ceiling !== '' || draft.substitute !== ''}>
      <summary>{words.limits}</summary>
      <div className="stack">
        <Field
          label={words.ceiling(unit)}
          hint={words.ceilingHint}
          inputMode="decimal"
          value={draft.ceiling}
          onChange={(event) => change({ ceiling: event.target.value })}
          problem={
            isCeilingWrong ? words.ceilingProblem : (problems.ceilingMinorUnits ?? problems.ceilingPerGrams)
          }
        />
        {others.length === 0 ? null : (
          <Choice
            label={words.substitute}
            value={draft.substitute}
            options={[
              { value: '', name: words.nothingInstead },
              ...others.map((line) => ({ value: line.id, name: foodNameOf(line, format.language) })),
            ]}
            onChange={(substitute) => change({ substitute })}
            problem={problems.substituteLineId}
          />
        )}
        {draft.substitute !== '' && draft.ceiling.trim() === '' ? (
          <p className="soft">{words.substituteNeeds}</p>
        ) : null}
      </div>
    </details>
  );
}
