import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { newKey } from '../../api/new-key.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { moneyTyped, wholeTyped } from '../equipment/typed.ts';
import { kindsQuery } from '../shelf/queries.ts';
import { type Supply, suppliesApi } from './queries.ts';
import { useSuppliesText } from './words.ts';

type NewSupply = InferRequestType<typeof suppliesApi.$post>['json'];
const EMPTY = { name: '', kind: 'container', kindId: '', size: '300', holds: '6', pack: '', price: '' };

/** A further supply: what it is, for which containers, and how it is sold. */
export function AddSupply() {
  const t = useSuppliesText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const kinds = useQuery(kindsQuery({ storehouse }));
  const { draft, change, reset } = useDraft('supply', EMPTY);
  const [isTried, setIsTried] = useState(false);
  const adding = useMutation({
    mutationFn: (json: NewSupply) => ask(suppliesApi.$post({ param: { storehouse }, json })),
    onSuccess: () => {
      reset();
      setIsTried(false);
      return queries.invalidateQueries({ queryKey: ['supplies'] });
    },
  });
  const containerKinds = kinds.data?.containerKinds ?? [];
  const hasKind = ['container', 'lid', 'liner', 'carton'].includes(draft.kind);
  const kindId = draft.kindId || (containerKinds[0]?.id ?? '');
  const [packPieces, packMinorUnits] = [wholeTyped(draft.pack), moneyTyped(draft.price, format.currency)];
  const sizeMillilitres = draft.kind === 'absorber' ? wholeTyped(draft.size) : null;
  const piecesEach = draft.kind === 'carton' ? wholeTyped(draft.holds) : 1;
  const isRead =
    typeof piecesEach === 'number' &&
    piecesEach > 0 &&
    typeof packPieces === 'number' &&
    packPieces > 0 &&
    packMinorUnits !== undefined &&
    sizeMillilitres !== undefined;
  const problems = problemsOf(adding.error);
  const field = (
    key: 'name' | 'size' | 'holds' | 'pack' | 'price',
    label: string,
    problem: string | undefined,
  ) => (
    <Field
      label={label}
      value={draft[key]}
      problem={problem}
      onChange={(event) => change({ [key]: event.target.value })}
    />
  );
  return (
    <details>
      <summary>{t.add}</summary>
      <Form
        label={t.add}
        onSend={() => {
          setIsTried(true);
          if (!isRead) return;
          adding.mutate({
            ...{ name: draft.name, kind: draft.kind as NewSupply['kind'], packPieces, packMinorUnits },
            ...{ containerKindId: hasKind ? kindId : null, sizeMillilitres, piecesEach },
          });
        }}
      >
        {field('name', t.name, problems.name)}
        <Choice
          label={t.sort}
          value={draft.kind}
          options={Object.entries(t.sorts).map(([value, name]) => ({ value, name }))}
          problem={problems.kind}
          onChange={(kind) => change({ kind })}
        />
        {hasKind ? (
          <Choice
            label={t.forKind}
            value={kindId}
            options={containerKinds.map((one) => ({ value: one.id, name: nameIn(format.language, one) }))}
            problem={problems.containerKindId}
            onChange={(chosen) => change({ kindId: chosen })}
          />
        ) : null}
        {draft.kind === 'absorber'
          ? field('size', t.size, isTried && sizeMillilitres === undefined ? t.countProblem : undefined)
          : null}
        {draft.kind === 'carton'
          ? field('holds', t.holds, isTried && !piecesEach ? t.countProblem : problems.piecesEach)
          : null}
        {field('pack', t.packPieces, isTried && !packPieces ? t.countProblem : problems.packPieces)}
        {field(
          'price',
          t.packPrice(format.currency),
          isTried && packMinorUnits === undefined ? t.moneyProblem : undefined,
        )}
        <ProblemSaid error={adding.error} />
        <button type="submit" className="btn" disabled={adding.isPending}>
          {t.addIt}
        </button>
      </Form>
    </details>
  );
}

/** What was counted, against what the book said when it was shown. */
export function CountSupply({ supplies }: { supplies: readonly Supply[] }) {
  const t = useSuppliesText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { chosen, typed },
    change,
    reset,
  } = useDraft('supply-count', { chosen: '', typed: { counted: '', reason: '' } });
  const [isTried, setIsTried] = useState(false);
  const [key, setKey] = useState(newKey); // the same count, sent again, counts once
  const supply = supplies.find(({ id }) => id === chosen) ?? supplies[0];
  const countedPieces = wholeTyped(typed.counted);
  const counting = useMutation({
    mutationFn: (json: { countedPieces: number; bookPieces: number; reason: string }) =>
      ask(
        suppliesApi[':supply'].counts.$post(
          { param: { storehouse, supply: supply?.id ?? '' }, json },
          { headers: { 'Idempotency-Key': key } },
        ),
      ),
    onSuccess: () => {
      reset();
      setKey(newKey());
      setIsTried(false);
      return queries.invalidateQueries({ queryKey: ['supplies'] });
    },
  });
  if (!supply) return null;
  return (
    <details>
      <summary>{t.count}</summary>
      <Form
        label={t.count}
        onSend={() => {
          setIsTried(true);
          if (typeof countedPieces === 'number')
            counting.mutate({ countedPieces, bookPieces: supply.onHandPieces, reason: typed.reason });
        }}
      >
        <Choice
          label={t.which}
          value={supply.id}
          options={supplies.map(({ id, name }) => ({ value: id, name }))}
          onChange={(chosen) => change({ chosen })}
        />
        <Field
          label={t.counted(format.count(supply.onHandPieces))}
          inputMode="numeric"
          value={typed.counted}
          problem={
            isTried && typeof countedPieces !== 'number'
              ? t.countProblem
              : problemsOf(counting.error).bookPieces
          }
          onChange={(event) => change({ typed: { ...typed, counted: event.target.value } })}
        />
        <Field
          label={t.why}
          value={typed.reason}
          problem={problemsOf(counting.error).reason}
          onChange={(event) => change({ typed: { ...typed, reason: event.target.value } })}
        />
        <ProblemSaid error={counting.error} />
        <button type="submit" className="btn" disabled={counting.isPending}>
          {t.countIt}
        </button>
      </Form>
    </details>
  );
}
