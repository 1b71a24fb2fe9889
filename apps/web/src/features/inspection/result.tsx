import { judgeInspection, type Outcome } from '@sheafbook/keeping';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { InferRequestType } from 'hono/client';
import { askOnce } from '../../api/client.ts';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { OF_STOCK } from '../shelf/queries.ts';
import { type Found, inside, type Look, type Looks, type Rules } from './queries.ts';
import { useInspectionText } from './words.ts';

const looks = inside.containers[':container'].inspections;
type Wish = InferRequestType<typeof looks.$post>['json'];
type Saved = { readonly id: string; readonly entryId: string | null; readonly onWatch: number };
const MARKS = {
  table: 'well',
  'kitchen-soon': 'watch',
  'freeze-and-repack': 'watch',
  animals: 'wrong',
  compost: 'wrong',
  discard: 'wrong',
} as const;
const LOST: readonly Outcome[] = ['animals', 'compost', 'discard'];

type Facts = { container: Looks['container']; rules: Rules; found: Found };
type ResultProps = Facts & { draft: Look; change: (part: Partial<Look>) => void; onSaved: () => void };

/** What the findings come to and why; whoever looked may be stricter, never laxer. */
export function Result({ container, rules, found, draft, change, onSaved }: ResultProps) {
  const words = useInspectionText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const judgement = judgeInspection(found.findings);
  const { note, isMovedOut } = draft;
  const outcome = judgement.allowed.find((one) => one === draft.outcome) ?? judgement.best;
  const canMove = LOST.includes(outcome) && container.grams > 0;
  const saving = useMutation({
    mutationFn: async (json: Wish): Promise<Saved> => {
      const { inspection, onWatch } = await askOnce(`look.${container.id}`, json, (headers) =>
        looks.$post({ param: { storehouse, container: container.id }, json }, { headers }),
      );
      return { id: inspection.id, entryId: inspection.entryId, onWatch };
    },
    onSuccess: () => {
      onSaved();
      return Promise.all(
        [...OF_STOCK, 'inspections'].map((key) => queries.invalidateQueries({ queryKey: [key] })),
      );
    },
  });
  const nameOf = (code: Outcome) => wordsOf(rules, code).name[format.language];
  if (saving.data) return <Written container={container} saved={saving.data} />;
  const mind = found.findings.flatMap(
    (finding) => rules.findings.find(({ code }) => code === finding)?.mind?.[format.language] ?? [],
  );
  return (
    <NextStep title={words.comesTo}>
      <p className="verdict">
        <State kind={MARKS[judgement.best]} word={nameOf(judgement.best)} />
      </p>
      <p>{wordsOf(rules, judgement.best).todo[format.language]}</p>
      {mind.map((one) => (
        <p key={one} className="said">
          {one}
        </p>
      ))}
      <ul>
        {judgement.deciding.map((finding) => {
          const said = rules.findings.find(({ code }) => code === finding);
          return (
            <li key={finding}>
              <b>{said?.name[format.language]}</b> {said?.why[format.language]}
            </li>
          );
        })}
      </ul>
      <Form
        onSend={() => {
          const { how, findings, kernels } = found;
          saving.mutate({
            ...{ how, findings: [...findings], kernels, outcome, note },
            isMovedOut: canMove && isMovedOut,
          });
        }}
      >
        {judgement.allowed.length === 1 ? null : (
          <Choice
            label={words.outcome}
            value={outcome}
            options={judgement.allowed.map((value) => ({ value, name: nameOf(value) }))}
            onChange={(value) => change({ outcome: value as Outcome })}
          />
        )}
        {canMove ? (
          <Check
            label={words.moveOut(format.mass(container.grams))}
            isOn={isMovedOut}
            onChange={(isMovedOut) => change({ isMovedOut })}
          />
        ) : null}
        <Field
          label={words.note}
          value={note}
          maxLength={500}
          onChange={(event) => change({ note: event.target.value })}
        />
        <ProblemSaid error={saving.error} />
        <div className="actions">
          <button type="submit" className="btn go" disabled={saving.isPending}>
            {words.write}
          </button>
          <button
            type="button"
            className="btn quiet"
            onClick={() => change({ found: null, outcome: null, isMovedOut: false })}
          >
            {words.back}
          </button>
        </div>
      </Form>
      <p className="soft">{words.planningAid}</p>
    </NextStep>
  );
}

function wordsOf(rules: Rules, code: Outcome) {
  const found = rules.outcomes.find((one) => one.code === code);
  if (!found) throw new Error(`no words for ${code}`);
  return found;
}

/** What was written, and the way back for grams that were booked out by mistake. */
function Written({ container, saved }: { container: Looks['container']; saved: Saved }) {
  const words = useInspectionText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const undoing = useMutation({
    mutationFn: () => {
      const json = { reason: words.undoReason };
      return askOnce(`unlook.${saved.id}`, json, (headers) =>
        inside.inspections[':inspection'].undoing.$post(
          { param: { storehouse, inspection: saved.id }, json },
          { headers },
        ),
      );
    },
    onSuccess: () =>
      Promise.all([...OF_STOCK, 'inspections'].map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
  return (
    <div className="stack" role="status">
      <p className="said well-said">{undoing.isSuccess ? words.undone : words.written}</p>
      {saved.onWatch === 0 ? null : <p className="said watch-said">{words.nowOnWatch(saved.onWatch)}</p>}
      <ProblemSaid error={undoing.error} />
      <div className="actions">
        <Link className="btn" to="/s/$storehouse/inspections" params={{ storehouse }}>
          {words.toList}
        </Link>
        {container.isCommon ? null : (
          <Link
            className="btn"
            to="/s/$storehouse/shelf/$container"
            params={{ storehouse, container: container.id }}
          >
            {words.toContainer}
          </Link>
        )}
        {saved.entryId === null || undoing.isSuccess ? null : (
          <button type="button" className="btn" disabled={undoing.isPending} onClick={() => undoing.mutate()}>
            {words.undo}
          </button>
        )}
      </div>
    </div>
  );
}
