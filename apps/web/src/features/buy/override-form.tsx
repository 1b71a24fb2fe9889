import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyLineBody, BuyPage, FillLine, Quote } from './buy-body.ts';
import { fieldWordsOf } from './field-words.ts';
import type { Names } from './fixing-tables.tsx';
import { foodNameOf } from './food-name.ts';
import { LongField } from './long-field.tsx';
import type { Fixing } from './run-queries.ts';
import { useFixing } from './use-fixing.ts';
import { useOrderText } from './words.ts';

type FormProps = { buy: BuyPage; look: Fixing; quotes: readonly Quote[]; names: Names };

/** Typed figures by the id of the bag offer or the pledge that they are for; what is not typed is as reckoned. */
type Typed = Readonly<Record<string, string>>;
const isWhole = (text: string) => /^\d{1,7}$/.test(text.trim());

/** Bags and shares set by hand, with the reason that everybody may read. */
export function OverrideForm({ buy, look, quotes, names }: FormProps) {
  const words = useOrderText();
  const { format } = useHouse();
  const {
    draft: { typed, reason },
    change,
  } = useDraft(
    `override.${buy.id}`,
    { typed: {} as Typed, reason: '' },
    { version: buy.version, rows: { typed: '' } },
  );
  const { fix, error, isPending, reset } = useFixing(buy.id);
  const lines = look.lines.filter(({ quoteId }) => quoteId !== null);
  const changed = lines.filter((line) => isChanged(line, quotes, typed));
  const isWrong = Object.values(typed).some((text) => !isWhole(text));
  const { hasFields, wordsOf } = fieldWordsOf(error);
  const known = Object.keys(problemsOf(error));
  const edit = (id: string, text: string) => {
    reset();
    change({ typed: { ...typed, [id]: text } });
  };
  const send = () => {
    const wish = {
      overrideReason: reason,
      override: changed.map((line) => ({
        buyLineId: line.lineId,
        bags: offersOf(line, quotes).map(({ id }) => ({ bagOfferId: id, bags: bagsOf(line, id, typed) })),
        allotments: (line.pledges ?? [])
          .filter(({ isSubstitute, dropped }) => !isSubstitute && dropped !== 'substitute')
          .map(({ pledgeId, units }) => ({ pledgeId, units: unitsOf(pledgeId, units, typed) })),
      })),
    };
    fix(wish);
  };
  return (
    <details>
      <summary>{words.byHand}</summary>
      <Form
        onSend={() => {
          if (!isWrong && changed.length > 0) send();
        }}
      >
        <p className="soft">{words.byHandWords}</p>
        {lines.map((line) => {
          const of = buy.lines.find(({ id }) => id === line.lineId);
          if (!of) return null;
          const at = changed.indexOf(line);
          const problems = known
            .filter((field) => at >= 0 && field.startsWith(`override.${at}.`))
            .flatMap((field) => wordsOf(field) ?? []);
          return (
            <LineByHand
              key={line.lineId}
              {...{ of, line, quotes, names, typed, edit }}
              title={foodNameOf(of, format.language)}
              problem={problems.join(' ') || undefined}
            />
          );
        })}
        <LongField
          label={words.reason}
          hint={words.reasonHint}
          value={reason}
          onChange={(text) => {
            reset();
            change({ reason: text });
          }}
          problem={wordsOf('overrideReason')}
        />
        {changed.length === 0 ? <p className="soft">{words.unchanged}</p> : null}
        {error && !hasFields ? <ProblemSaid error={error} /> : null}
        <div>
          <button type="submit" className="btn" disabled={isPending || isWrong || changed.length === 0}>
            {words.fixByHand}
          </button>
        </div>
      </Form>
    </details>
  );
}

function offersOf(line: FillLine, quotes: readonly Quote[]) {
  const quote = quotes.find(({ id }) => id === line.quoteId);
  return (quote?.offers ?? []).filter(({ buyLineId }) => buyLineId === line.lineId);
}

const reckonedBags = (line: FillLine, offerId: string) =>
  line.bags.find(({ bagOfferId }) => bagOfferId === offerId)?.bags ?? 0;
const bagsOf = (line: FillLine, offerId: string, typed: Typed) =>
  isWhole(typed[offerId] ?? '') ? Number(typed[offerId]) : reckonedBags(line, offerId);
const unitsOf = (pledgeId: string, units: number, typed: Typed) =>
  isWhole(typed[pledgeId] ?? '') ? Number(typed[pledgeId]) : units;

const isChanged = (line: FillLine, quotes: readonly Quote[], typed: Typed) =>
  offersOf(line, quotes).some(({ id }) => bagsOf(line, id, typed) !== reckonedBags(line, id)) ||
  (line.pledges ?? []).some(({ pledgeId, units }) => unitsOf(pledgeId, units, typed) !== units);

type LineProps = {
  of: BuyLineBody;
  line: FillLine;
  quotes: readonly Quote[];
  names: Names;
  typed: Typed;
  edit: (id: string, text: string) => void;
  title: string;
  problem: string | undefined;
};

function LineByHand({ of, line, quotes, names, typed, edit, title, problem }: LineProps) {
  const words = useOrderText();
  const { format } = useHouse();
  const unit = of.massUnit === 'kg' ? 'kg' : 'lb';
  const offers = offersOf(line, quotes);
  const supplier = quotes.find(({ id }) => id === line.quoteId)?.supplier.name ?? '';
  const pledges = (line.pledges ?? []).filter(({ isSubstitute }) => !isSubstitute);
  const held = offers.reduce((sum, { id, bagSize }) => sum + bagsOf(line, id, typed) * bagSize, 0);
  const given = pledges.reduce((sum, { pledgeId, units }) => sum + unitsOf(pledgeId, units, typed), 0);
  const mass = (units: number) => `${format.count(units)} ${unit}`;
  const figure = (id: string, label: string, reckoned: number) => {
    const text = typed[id] ?? String(reckoned);
    return (
      <Field
        key={id}
        label={label}
        inputMode="numeric"
        value={text}
        onChange={(event) => edit(id, event.target.value)}
        problem={isWhole(text) ? undefined : words.wholeProblem}
      />
    );
  };
  return (
    <fieldset className="stack">
      <legend className="legend">{title}</legend>
      <div className="pair">
        {offers.map(({ id, bagLabel }) =>
          figure(id, words.bagsOfOffer(bagLabel, supplier), reckonedBags(line, id)),
        )}
      </div>
      <div className="pair">
        {pledges.map(({ pledgeId, householdId, units }) =>
          figure(pledgeId, words.getsOf(names.household(householdId), unit), units),
        )}
      </div>
      <p className={given > held ? 'problem-line' : 'soft'} aria-live="polite">
        {given > held
          ? words.overBy(mass(given - held))
          : words.holds({ bags: mass(held), allotted: mass(given), left: mass(held - given) })}
      </p>
      {problem === undefined ? null : (
        <p className="problem-line" role="alert">
          {problem}
        </p>
      )}
    </fieldset>
  );
}
