import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useText } from '../../text/taste.ts';
import { Check, Choice, Field, type Problems } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { foodsQuery } from '../buy/run-queries.ts';
import { useFoodText } from '../food/words.ts';
import { kindsQuery } from '../shelf/queries.ts';
import { ASKED, type CardDraft, massTyped } from './card-draft.ts';
import { useGivingText } from './words.ts';

type Form = {
  readonly draft: CardDraft;
  readonly change: (part: Partial<CardDraft>) => void;
  readonly problems: Problems;
  readonly isTried: boolean;
};

/** A card in plain questions. What nobody has said stays open, and counts as a no. */
export function CardFields(form: Form) {
  const words = useGivingText();
  const { draft, change, problems } = form;
  return (
    <>
      <h2>{words.cardTitle}</h2>
      <p className="soft">{words.cardWords}</p>
      {ASKED.map((key) => (
        <Choice
          key={key}
          label={words.asks[key] ?? key}
          value={draft.answers[key]}
          options={[
            { value: '', name: words.nobodySaid },
            { value: 'yes', name: words.yes },
            { value: 'no', name: words.no },
          ]}
          problem={problems[`card.${key}`]}
          onChange={(value) => change({ answers: { ...draft.answers, [key]: value } })}
        />
      ))}
      <Figures {...form} />
      <Hours {...form} />
      <Codes {...form} />
      <Field
        label={words.note}
        value={draft.note}
        problem={problems['card.note']}
        onChange={(event) => change({ note: event.target.value })}
      />
      <div className="pair">
        <Field
          label={words.confirmedOn}
          type="date"
          value={draft.confirmedOn}
          problem={problems['card.confirmedOn']}
          onChange={(event) => change({ confirmedOn: event.target.value })}
        />
        <Field
          label={words.confirmedBy}
          value={draft.confirmedBy}
          problem={problems['card.confirmedBy']}
          onChange={(event) => change({ confirmedBy: event.target.value })}
        />
      </div>
    </>
  );
}

function Figures({ draft, change, isTried }: Form) {
  const words = useGivingText();
  const foodWords = useFoodText();
  const { massDisplay } = useHouse();
  const whole = (text: string, isNeeded: boolean) =>
    isTried && (!/^\d{0,5}$/.test(text.trim()) || (isNeeded && text.trim() === ''))
      ? words.wholeProblem
      : undefined;
  const mass = (text: string) =>
    isTried && massTyped(text, massDisplay) === undefined ? words.massProblem : undefined;
  const field = (key: 'leastLife' | 'pastBest' | 'perVisit' | 'perWeek', label: string, problem?: string) => (
    <Field
      label={label}
      inputMode="decimal"
      value={draft[key]}
      problem={problem}
      onChange={(event) => change({ [key]: event.target.value })}
    />
  );
  return (
    <>
      {field('leastLife', words.leastLife, whole(draft.leastLife, true))}
      {field('pastBest', words.pastBest, whole(draft.pastBest, false))}
      {draft.pastBest.trim() === '' ? null : (
        <Check
          label={words.pastBestAny}
          isOn={draft.isAnyPast}
          onChange={(isAnyPast) => change({ isAnyPast })}
        />
      )}
      {draft.pastBest.trim() === '' || draft.isAnyPast ? null : (
        <Ticks
          title={words.pastBestWhich}
          options={Object.entries(foodWords.keepingClasses).map(([value, name]) => ({ value, name }))}
          on={draft.pastClasses}
          onChange={(list) => change({ pastClasses: list })}
        />
      )}
      {field('perVisit', words.perVisit(massDisplay), mass(draft.perVisit))}
      {field('perWeek', words.perWeek(massDisplay), mass(draft.perWeek))}
    </>
  );
}

function Hours({ draft, change, problems }: Form) {
  const words = useGivingText();
  const set = (weekday: number, part: Partial<CardDraft['hours'][number]>) =>
    change({ hours: draft.hours.map((row, at) => (at === weekday ? { ...row, ...part } : row)) });
  return (
    <fieldset>
      <legend>{words.hours}</legend>
      {words.weekdays.map((name, weekday) => (
        <div className="pair" key={name}>
          <Field
            label={words.opens(name)}
            type="time"
            value={draft.hours[weekday]?.opensAt ?? ''}
            onChange={(event) => set(weekday, { opensAt: event.target.value })}
          />
          <Field
            label={words.closesAt(name)}
            type="time"
            value={draft.hours[weekday]?.closesAt ?? ''}
            onChange={(event) => set(weekday, { closesAt: event.target.value })}
          />
        </div>
      ))}
      <p className="problem" role="alert">
        {Object.entries(problems).find(([field]) => field.startsWith('card.openings'))?.[1]}
      </p>
    </fieldset>
  );
}

/** Which containers, foods and allergens, and what the label must say. */
function Codes({ draft, change, problems }: Form) {
  const t = useText();
  const words = useGivingText();
  const { storehouse, format } = useHouse();
  const kinds = useQuery(kindsQuery({ storehouse }));
  const foods = useQuery(foodsQuery({ storehouse }));
  const foodNames = (foods.data ?? []).map((food) => ({
    value: food.foodCode,
    name: nameIn(format.language, food),
  }));
  const kindNames = (kinds.data?.containerKinds ?? []).map((kind) => ({
    value: kind.kindCode,
    name: nameIn(format.language, kind),
  }));
  const nameAll = (names: Readonly<Record<string, string>>) =>
    Object.entries(names).map(([value, name]) => ({ value, name }));
  return (
    <>
      <Check label={words.anyKind} isOn={draft.isAnyKind} onChange={(isAnyKind) => change({ isAnyKind })} />
      {draft.isAnyKind ? null : (
        <Ticks
          title={words.kinds}
          options={kindNames}
          on={draft.kinds}
          onChange={(list) => change({ kinds: list })}
        />
      )}
      <Say>{problems['card.containerKindCodes']}</Say>
      <Check label={words.anyFood} isOn={draft.isAnyFood} onChange={(isAnyFood) => change({ isAnyFood })} />
      {draft.isAnyFood ? null : (
        <Ticks
          title={words.foods}
          options={foodNames}
          on={draft.foods}
          onChange={(list) => change({ foods: list })}
        />
      )}
      <Say>{problems['card.foodCodesWanted']}</Say>
      <Folded title={words.foodsNot} count={draft.foodsNot.length}>
        <Ticks
          title={words.foodsNot}
          options={foodNames}
          on={draft.foodsNot}
          onChange={(list) => change({ foodsNot: list })}
        />
      </Folded>
      <Folded title={words.allergensNot} count={draft.allergensNot.length}>
        <Ticks
          title={words.allergensNot}
          options={nameAll(t.allergens)}
          on={draft.allergensNot}
          onChange={(list) => change({ allergensNot: list })}
        />
      </Folded>
      <Ticks
        title={words.labelMust}
        options={nameAll(words.labelFacts)}
        on={draft.labelFacts}
        onChange={(list) => change({ labelFacts: list })}
      />
    </>
  );
}

const Say = ({ children }: { children: ReactNode }) => (
  <p className="problem" role="alert">
    {children}
  </p>
);

const Folded = ({ title, count, children }: { title: string; count: number; children: ReactNode }) => (
  <details>
    <summary>{count === 0 ? title : `${title} (${count})`}</summary>
    {children}
  </details>
);

function Ticks({
  title,
  options,
  on,
  onChange,
}: {
  title: string;
  options: readonly { value: string; name: string }[];
  on: readonly string[];
  onChange: (list: string[]) => void;
}) {
  return (
    <fieldset>
      <legend>{title}</legend>
      {options.map(({ value, name }) => (
        <Check
          key={value}
          label={name}
          isOn={on.includes(value)}
          onChange={(isOn) => onChange([...on.filter((one) => one !== value), ...(isOn ? [value] : [])])}
        />
      ))}
    </fieldset>
  );
}
