import { useMutation, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { ofSession } from '../packing/queries.ts';
import type { LogQueue } from '../packing/use-log.ts';
import { inside, type SealWindow, type Settling, type Suspect, type Watch } from './queries.ts';
import { ReCan } from './re-can.tsx';
import { useSeamText } from './words.ts';

type WindowProps = {
  window: SealWindow;
  watch: Watch;
  log: LogQueue;
  onOpen: (serial: number) => void;
};

/** What a failed check put in doubt: the serials as a strip, which one to open next, who has them, and the answers. */
export function WindowOf({ window, watch, log, onOpen }: WindowProps) {
  const t = useSeamText();
  const { suspects, check, nextToOpen, isDrift } = window;
  const [first] = suspects;
  const last = suspects.at(-1);
  const open = suspects.filter(({ disposition }) => disposition === null);
  if (!first || !last) return null;
  if (open.length === 0)
    return (
      <section className="stack">
        <p className="said well-said">{t.answered(first.serial, last.serial)}</p>
        <ReCan {...{ suspects, watch, log }} />
      </section>
    );
  const next = open.find(({ serial }) => serial === nextToOpen);
  return (
    <section className="stack">
      <h2>{t.windowOf(check.line, first.serial, last.serial)}</h2>
      <Strip {...{ suspects, nextToOpen }} />
      <ul className="strip-key" aria-hidden="true">
        {(['suspect', 'cleared', 'opened', 'bad'] as const).map((state) => (
          <li key={state}>
            <span className={`serial ${state}`} /> {t.states[state]}
          </li>
        ))}
      </ul>
      {isDrift ? null : <p className="said watch-said">{t.random}</p>}
      {next ? (
        <>
          <p>{t.next(next.serial, next.spelled, next.household.name)}</p>
          <button type="button" className="btn go" onClick={() => onOpen(next.serial)}>
            {t.openNext(next.serial)}
          </button>
        </>
      ) : null}
      <Owners open={open} />
      <Answers {...{ open, watch }} />
      <ReCan {...{ suspects, watch, log }} />
    </section>
  );
}

function Strip({ suspects, nextToOpen }: { suspects: readonly Suspect[]; nextToOpen: number | null }) {
  const t = useSeamText();
  const countOf = (wanted: string) => suspects.filter(({ state }) => state === wanted).length;
  return (
    <div
      className="strip"
      role="img"
      aria-label={t.stripLabel(
        suspects.length,
        countOf('suspect'),
        countOf('cleared') + countOf('opened'),
        countOf('bad'),
      )}
    >
      {suspects.map(({ serial, state, disposition }) => (
        <span
          key={serial}
          className={`serial ${state} ${serial === nextToOpen ? 'next' : ''} ${disposition ? 'done' : ''}`}
        >
          {serial}
        </span>
      ))}
    </div>
  );
}

const ownersOf = (open: readonly Suspect[]) => {
  const ids = [...new Set(open.map(({ household }) => household.householdId))];
  return ids.map((id) => open.filter(({ household }) => household.householdId === id));
};

function Owners({ open }: { open: readonly Suspect[] }) {
  const t = useSeamText();
  return (
    <details>
      <summary>{t.whoHas(ownersOf(open).length)}</summary>
      <ul className="list">
        {ownersOf(open).map((own) => (
          <li key={own[0]?.household.householdId}>
            <b>{own[0]?.household.name}</b>
            <span className="soft block">{own.map(({ spelled }) => spelled).join(', ')}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

const REST = ['re-can', 'eat-now', 'discard'] as const;

/** What becomes of them: what passed is let go once the machine runs, the rest is re-canned, eaten now or thrown away. */
function Answers({ open, watch }: { open: readonly Suspect[]; watch: Watch }) {
  const t = useSeamText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { chosen, answer, note },
    change,
    reset,
  } = useDraft(`seam-answer.${watch.session.id}`, {
    chosen: '',
    answer: 're-can' as (typeof REST)[number],
    note: '',
  });
  const passed = open.filter(({ state }) => state === 'cleared');
  const rest = open.filter(({ state }) => state !== 'cleared');
  const groups = [
    ...(passed.length > 0 ? [{ value: 'passed', name: t.thatPassed(passed.length), of: passed }] : []),
    ...(rest.length > 0 ? [{ value: 'rest', name: t.theRest(rest.length), of: rest }] : []),
    ...(ownersOf(rest).length > 1 ? ownersOf(rest) : []).map((own) => ({
      value: own[0]?.household.householdId ?? '',
      name: t.ofOwner(own[0]?.household.name ?? '', own.length),
      of: own,
    })),
  ];
  const group = groups.find(({ value }) => value === chosen) ?? groups[0];
  const disposition = group?.value === 'passed' ? 'release' : answer;
  const settling = useMutation({
    mutationFn: (json: Settling) => ask(inside['seal-holds'].settling.$post({ param: { storehouse }, json })),
    onSuccess: async () => {
      reset();
      await queries.invalidateQueries({
        queryKey: ofSession({ storehouse, session: watch.session.id }),
      });
    },
  });
  if (!group) return null;
  return (
    <Form
      onSend={() =>
        settling.mutate({
          ...{ containerIds: group.of.map(({ containerId }) => containerId), disposition, note },
        })
      }
    >
      <h3>{t.answer}</h3>
      <Choice
        label={t.which}
        value={group.value}
        options={groups.map(({ value, name }) => ({ value, name }))}
        onChange={(chosen) => change({ chosen })}
      />
      {group.value === 'passed' ? null : (
        <Choice
          label={t.whatToDo}
          value={answer}
          options={REST.map((value) => ({ value, name: t.dispositions[value] }))}
          onChange={(value) => change({ answer: REST.find((one) => one === value) ?? 're-can' })}
        />
      )}
      <Field
        label={t.found}
        value={note}
        hint={t.foundHint}
        onChange={(event) => change({ note: event.target.value })}
      />
      <p className="said watch-said">{t.foodCaution}</p>
      <ProblemSaid error={settling.error} />
      <button type="submit" className="btn" disabled={settling.isPending || note.trim() === ''}>
        {t.answerIt[disposition](group.of.length)}
      </button>
    </Form>
  );
}
