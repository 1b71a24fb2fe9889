import { useId } from 'react';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { useDraft } from '../../ui/use-draft.ts';
import { nameOfLine } from './landing-body.ts';
import type { Floor, Landing, OpenLorry } from './use-landing.ts';
import { useLandingText } from './words.ts';

type CountFormProps = { landing: Landing; lorry: OpenLorry; floors: readonly Floor[]; onDone?: () => void };

/** How many bags of each size stand there. Nothing is a count too, and it is typed: 0. */
export function CountForm({ landing, lorry, floors, onDone }: CountFormProps) {
  const t = useLandingText();
  const { draft, change, forget } = useDraft<Record<string, string>>(
    `count.${landing.param.buy}`,
    Object.fromEntries(
      floors.map(({ line, counted }) => [line.bagOfferId, counted === null ? '' : String(counted)]),
    ),
  );
  const typed = floors.map(({ line }) => draft[line.bagOfferId]?.trim() ?? '');
  const counts = floors.flatMap(({ line }, at) =>
    /^\d{1,6}$/.test(typed[at] ?? '')
      ? [{ bagOfferId: line.bagOfferId, countedBags: Number(typed[at]) }]
      : [],
  );
  const isWrong = typed.some((text) => text !== '' && !/^\d{1,6}$/.test(text));
  return (
    <Form
      isTight
      onSend={() => {
        landing.write({ kind: 'counts', deliveryId: lorry.id, counts });
        forget();
        onDone?.();
      }}
    >
      {floors.map((floor) => (
        <CountRow
          key={floor.line.bagOfferId}
          floor={floor}
          text={draft[floor.line.bagOfferId] ?? ''}
          onChange={(text) => change({ [floor.line.bagOfferId]: text })}
        />
      ))}
      <button type="submit" className="btn go" disabled={counts.length === 0 || isWrong}>
        {t.writeCounts}
      </button>
    </Form>
  );
}

function CountRow({
  floor,
  text,
  onChange,
}: {
  floor: Floor;
  text: string;
  onChange: (text: string) => void;
}) {
  const t = useLandingText();
  const { format } = useHouse();
  const id = useId();
  const { line } = floor;
  const name = nameOfLine(line, format.language);
  const count = /^\d{1,6}$/.test(text.trim()) ? Number(text) : null;
  const problem = text.trim() !== '' && count === null ? t.countProblem : '';
  const missing = line.orderedBags - (count ?? line.orderedBags);
  return (
    <div className="counting">
      <label className="what" htmlFor={id}>
        <b>{name}</b>
        <br />
        <span className="soft">
          {t.orderedOf(line.bagLabel, line.orderedBags)}
          {count === null || missing === 0 ? '' : ` ${missing > 0 ? t.shortBy(missing) : t.overBy(-missing)}`}
        </span>
      </label>
      <button
        type="button"
        className="enamel"
        aria-label={t.oneLess(name)}
        onClick={() => onChange(String(Math.max(0, (count ?? line.orderedBags + 1) - 1)))}
      >
        {'−'}
      </button>
      <input
        id={id}
        inputMode="numeric"
        autoComplete="off"
        value={text}
        aria-invalid={problem ? true : undefined}
        aria-describedby={`${id}-problem`}
        onChange={(event) => onChange(event.target.value)}
      />
      <button
        type="button"
        className="enamel"
        aria-label={t.oneMore(name)}
        onClick={() => onChange(String((count ?? line.orderedBags - 1) + 1))}
      >
        {'+'}
      </button>
      <span id={`${id}-problem`} className="problem" role="alert">
        {problem}
      </span>
    </div>
  );
}
