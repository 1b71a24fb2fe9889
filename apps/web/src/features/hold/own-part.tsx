import { spellCode } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { ask, askOnce } from '../../api/client.ts';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type Hold, inside, type OwnPart, ownPartQuery, useHoldCommand } from './queries.ts';
import { SentenceForm } from './sentence-form.tsx';
import { useSlipWords } from './slip-form.tsx';
import { useHoldText } from './words.ts';

const one = inside.holds[':hold'];

/** What one's own household has of it, what it says became of the rest, and throwing it away. */
export function OwnPartOf({ hold }: { hold: Hold }) {
  const words = useHoldText();
  const { storehouse } = useHouse();
  const reading = useQuery(ownPartQuery({ storehouse, hold: hold.id }));
  return (
    <section className="stack">
      <h2>{words.ownTitle}</h2>
      <Loaded reading={reading}>
        {(own) => (own.isConcerned ? <Concerned hold={hold} own={own} /> : <p>{words.notYours}</p>)}
      </Loaded>
    </section>
  );
}

function Concerned({ hold, own }: { hold: Hold; own: OwnPart }) {
  const words = useHoldText();
  const { format } = useHouse();
  const slipWords = useSlipWords();
  const grams = own.held.reduce((sum, one) => sum + one.grams, 0);
  const codes = own.held.map(({ code }) => (code === '' ? words.yourKitchen : spellCode(code))).join(', ');
  return (
    <>
      <p>{grams === 0 ? words.ownNone : words.ownHas(format.mass(grams), codes)}</p>
      {own.slip ? <p>{slipWords(own.slip)}</p> : null}
      {hold.endedAt === null ? <SayForm hold={hold} own={own} /> : null}
      {hold.endedAt === null && grams > 0 ? (
        <DestroyForm
          hold={hold}
          of="household"
          says={words.destroySays(format.mass(grams))}
          button={words.destroy}
        />
      ) : null}
    </>
  );
}

function SayForm({ hold, own: { answer } }: { hold: Hold; own: OwnPart }) {
  const words = useHoldText();
  const { storehouse, format } = useHouse();
  const start = {
    hasSome: answer?.hasSome ?? false,
    eatenOn: answer?.eatenOn ?? '',
    givenOn: answer?.givenOn ?? '',
    note: answer?.note ?? '',
  };
  const { draft, change, forget } = useDraft(`recall.${hold.id}`, start, {
    version: answer?.answeredAt ?? 0,
  });
  const saying = useHoldCommand(async () => {
    const { hasSome, eatenOn, givenOn, note } = draft;
    const json = { hasSome, eatenOn: eatenOn || null, givenOn: givenOn || null, note };
    await ask(one.answer.$put({ param: { storehouse, hold: hold.id }, json }));
    forget();
  });
  const problems = problemsOf(saying.error);
  return (
    <Form isTight onSend={() => saying.mutate(undefined)}>
      <h3>{words.sayTitle}</h3>
      {answer === null ? null : <p>{words.said(format.instant(answer.answeredAt))}</p>}
      <Check label={words.hasSome} isOn={draft.hasSome} onChange={(hasSome) => change({ hasSome })} />
      <Field
        type="date"
        label={words.eatenOn}
        hint={words.dayHint}
        problem={problems.eatenOn}
        value={draft.eatenOn}
        onChange={(event) => change({ eatenOn: event.target.value })}
      />
      <Field
        type="date"
        label={words.givenOn}
        hint={words.dayHint}
        problem={problems.givenOn}
        value={draft.givenOn}
        onChange={(event) => change({ givenOn: event.target.value })}
      />
      <Field
        label={words.note}
        value={draft.note}
        onChange={(event) => change({ note: event.target.value })}
      />
      <ProblemSaid error={saying.error} />
      <div className="actions">
        <button type="submit" className="btn go" disabled={saying.isPending}>
          {words.say}
        </button>
      </div>
    </Form>
  );
}

type DestroyProps = { hold: Hold; of: 'household' | 'common'; says: string; button: string };

/** One step: the reason, and all of it is booked out. */
export function DestroyForm({ hold, of, says, button }: DestroyProps) {
  const words = useHoldText();
  const { storehouse, format } = useHouse();
  const name = `destroy.${hold.id}.${of}`;
  return (
    <details>
      <summary>{button}</summary>
      <SentenceForm
        {...{ name, says, button }}
        label={words.reason}
        send={(reason) =>
          askOnce(name, { of, reason }, (headers) =>
            one.destruction.$post(
              { param: { storehouse, hold: hold.id }, json: { of, reason } },
              { headers },
            ),
          )
        }
        done={({ grams }) => words.destroyed(format.mass(grams))}
      />
    </details>
  );
}
