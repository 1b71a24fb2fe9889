import { useQuery } from '@tanstack/react-query';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { candidatesQuery, type Kind, type Line, type PostWish, partiesQuery } from './queries.ts';
import { isSecondReceipt } from './question.tsx';
import type { LineActions } from './use-line.ts';
import { useBankText, useEntryName } from './words.ts';

type Props = { line: Line; actions: LineActions; post: (wish: PostWish) => void };

/** Every other way to place a line: post it as something else, find its entry by hand, or set it aside. */
export function OtherWay({ line, actions, post }: Props) {
  return (
    <div className="stack bank-other">
      <PostForm line={line} actions={actions} post={post} />
      <Candidates line={line} actions={actions} />
      <SetAside line={line} actions={actions} />
    </div>
  );
}

const CAME_IN: readonly Kind[] = ['payment', 'deposit', 'gift', 'cash-banked'];
const WENT_OUT: readonly Kind[] = ['supplier-payment', 'bank-charge', 'repairs', 'refund'];
const NEEDS: Readonly<Record<Kind, readonly ('household' | 'buy' | 'supplier')[]>> = {
  payment: ['household'],
  deposit: ['household', 'buy'],
  refund: ['household'],
  'supplier-payment': ['supplier'],
  ...{ gift: [], 'cash-banked': [], 'bank-charge': [], repairs: [] },
};

function PostForm({ line, actions, post }: Props) {
  const words = useBankText();
  const { storehouse, format } = useHouse();
  const parties = useQuery(partiesQuery({ storehouse }));
  const kinds = line.minorUnits > 0 ? CAME_IN : WENT_OUT;
  const { draft, change } = useDraft(`bank-line.${line.id}`, {
    as: kinds[0] ?? 'payment',
    ...{ household: '', supplier: '', buy: '', onDay: '', isPrepayment: false },
  });
  const { as } = draft;
  const needs = NEEDS[as];
  const { error } = actions.posting;
  const problems = problemsOf(error);
  const isWhole = needs.every((need) => draft[need] !== '');
  const hasField = ['householdId', 'buyId', 'supplierId', 'onDay', 'as'].some((field) => field in problems);
  return (
    <Loaded reading={parties}>
      {({ households, suppliers, buys }) => {
        const options = { household: households, supplier: suppliers, buy: buys };
        const partyId = draft[as === 'supplier-payment' ? 'supplier' : 'household'];
        const party = [...households, ...suppliers].find(({ value }) => value === partyId)?.name ?? '';
        const nothing = { value: '', name: words.choose };
        return (
          <Form
            onSend={() => {
              if (!isWhole) return;
              post({
                as,
                ...(needs.includes('household') ? { householdId: draft.household } : {}),
                ...(needs.includes('buy') ? { buyId: draft.buy } : {}),
                ...(needs.includes('supplier') ? { supplierId: draft.supplier } : {}),
                ...(as === 'supplier-payment' ? { isPrepayment: draft.isPrepayment } : {}),
                ...(draft.onDay === '' ? {} : { onDay: draft.onDay }),
              });
            }}
          >
            <Choice
              label={words.whatIsIt}
              value={as}
              options={kinds.map((value) => ({ value, name: words.kinds[value] }))}
              onChange={(value) => change({ as: value as Kind })}
              problem={problems.as}
            />
            {needs.map((need) => (
              <Choice
                key={need}
                label={words[need]}
                value={draft[need]}
                options={[nothing, ...options[need]]}
                onChange={(value) => change({ [need]: value })}
                problem={problems[`${need}Id`]}
              />
            ))}
            {as === 'supplier-payment' ? (
              <Check
                label={words.prepayment}
                isOn={draft.isPrepayment}
                onChange={(isPrepayment) => change({ isPrepayment })}
              />
            ) : null}
            {problems.onDay || draft.onDay !== '' ? (
              <Field
                label={words.onDay}
                hint={words.onDayHint}
                type="date"
                value={draft.onDay}
                onChange={(event) => change({ onDay: event.target.value })}
                problem={problems.onDay}
              />
            ) : null}
            {isWhole ? (
              <p className="soft">{words.posts[as](format.money(Math.abs(line.minorUnits)), party)}</p>
            ) : null}
            {error && !isSecondReceipt(error) && !hasField ? <ProblemSaid error={error} /> : null}
            <div>
              <button type="submit" className="btn" disabled={!isWhole || actions.posting.isPending}>
                {words.postIt}
              </button>
            </div>
          </Form>
        );
      }}
    </Loaded>
  );
}

function Candidates({ line, actions }: Omit<Props, 'post'>) {
  const words = useBankText();
  const nameOf = useEntryName();
  const { storehouse, format } = useHouse();
  const candidates = useQuery(candidatesQuery({ storehouse, bankLine: line.id }));
  return (
    <section className="stack">
      <h3>{words.sameAmount}</h3>
      <Loaded reading={candidates}>
        {({ entries }) =>
          entries.length === 0 ? (
            <p className="soft">{words.noSameAmount}</p>
          ) : (
            <ul className="bank-candidates">
              {entries.map((entry) => {
                const what = nameOf(entry.what);
                const said = words.entry(entry.entryNo, what, entry.party ?? '', format.day(entry.onDay));
                return (
                  <li key={entry.id} className="row">
                    <span>{said}</span>
                    <button
                      type="button"
                      className="btn"
                      aria-label={`${words.isThisEntry}: ${said}`}
                      disabled={actions.matching.isPending}
                      onClick={() => actions.matching.mutate(entry.id)}
                    >
                      {words.isThisEntry}
                    </button>
                  </li>
                );
              })}
            </ul>
          )
        }
      </Loaded>
    </section>
  );
}

function SetAside({ line, actions }: Omit<Props, 'post'>) {
  const words = useBankText();
  const { draft, change } = useDraft(`bank-aside.${line.id}`, { reason: '' });
  const { settingAside } = actions;
  const problems = problemsOf(settingAside.error);
  return (
    <Form onSend={() => settingAside.mutate(draft.reason)}>
      <h3>{words.setAside}</h3>
      <Field
        label={words.setAsideWhy}
        value={draft.reason}
        maxLength={500}
        onChange={(event) => change({ reason: event.target.value })}
        problem={problems.reason}
      />
      {settingAside.error && !problems.reason ? <ProblemSaid error={settingAside.error} /> : null}
      <div>
        <button type="submit" className="btn" disabled={settingAside.isPending}>
          {words.setAsideNow}
        </button>
      </div>
    </Form>
  );
}
