import { Field } from '../../ui/field.tsx';
import { useEquipmentText } from './words.ts';

type Span = {
  readonly fromDay: string;
  readonly fromTime: string;
  readonly untilDay: string;
  readonly untilTime: string;
};
type Props = {
  span: Span;
  change: (part: Partial<Span>) => void;
  problems: { readonly from?: string | undefined; readonly until?: string | undefined };
};

/** From when until when something is wanted, as days and hours of the storehouse's clock. */
export function SpanFields({ span, change, problems }: Props) {
  const words = useEquipmentText();
  return (
    <>
      <div className="pair">
        <Field
          label={words.fromDay}
          type="date"
          value={span.fromDay}
          onChange={(event) => change({ fromDay: event.target.value })}
          problem={problems.from}
        />
        <Field
          label={words.fromTime}
          type="time"
          value={span.fromTime}
          onChange={(event) => change({ fromTime: event.target.value })}
        />
      </div>
      <div className="pair">
        <Field
          label={words.untilDay}
          type="date"
          value={span.untilDay}
          onChange={(event) => change({ untilDay: event.target.value })}
          problem={problems.until}
        />
        <Field
          label={words.untilTime}
          type="time"
          value={span.untilTime}
          onChange={(event) => change({ untilTime: event.target.value })}
        />
      </div>
    </>
  );
}
