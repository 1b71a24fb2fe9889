import { parseMoney, sumOf } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Figures, NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type TinBody, tinApi, tinKey } from './queries.ts';
import { useTinText } from './words.ts';

type People = readonly { readonly value: string; readonly name: string }[];
const START = {
  how: 'pieces' as 'pieces' | 'total',
  total: '',
  with: '',
  reason: '',
  pieces: {} as Record<string, string>,
};

const isCount = (text: string): boolean => /^\s*\d{0,6}\s*$/.test(text);

/** A count by notes and coins or by its total, with what it would post said before the tap. */
export function CountForm({ tin, people }: { tin: TinBody; people: People }) {
  const words = useTinText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [isTried, setIsTried] = useState(false);
  const hasPieces = tin.pieces.length > 0;
  const { draft, change, reset } = useDraft(`tin.${storehouse}`, START);
  const how = hasPieces ? draft.how : 'total';
  const counted = readCount(how, draft, tin);
  const difference = counted === undefined ? undefined : counted - tin.expectedMinorUnits;
  const needsReason = difference !== undefined && difference !== 0;
  const keeping = useMutation({
    mutationFn: (countedMinorUnits: number) => {
      const json = {
        countedMinorUnits,
        expectedMinorUnits: tin.expectedMinorUnits,
        pieces: how === 'pieces' ? piecesOf(draft, tin) : null,
        countedWithPersonId: draft.with === '' ? null : draft.with,
        reason: draft.reason.trim(),
      };
      return askOnce(`tin.${storehouse}`, json, (headers) =>
        tinApi.counts.$post({ param: { storehouse }, json }, { headers }),
      );
    },
    onSuccess: () => {
      reset(START);
      setIsTried(false);
    },
    onSettled: () => queries.invalidateQueries({ queryKey: tinKey({ storehouse }) }),
  });
  const problems = problemsOf(keeping.error);
  const hasMoved = keeping.error instanceof ApiProblem && keeping.error.code === 'stale-version';
  const isSaid = hasMoved || 'reason' in problems;
  return (
    <Form
      onSend={() => {
        setIsTried(true);
        if (counted !== undefined && !(needsReason && draft.reason.trim() === '')) keeping.mutate(counted);
      }}
    >
      <h2>{words.count}</h2>
      {hasPieces ? (
        <Choice
          label={words.how}
          value={how}
          options={[
            { value: 'pieces', name: words.byPieces },
            { value: 'total', name: words.byTotal },
          ]}
          onChange={(value) => change({ how: value as typeof how })}
        />
      ) : null}
      {how === 'pieces' ? (
        <div className="tin-pieces">
          {tin.pieces.map((worth) => (
            <Field
              key={worth}
              label={words.piece(format.money(worth))}
              inputMode="numeric"
              value={draft.pieces[worth] ?? ''}
              onChange={(event) => change({ pieces: { ...draft.pieces, [worth]: event.target.value } })}
              problem={isCount(draft.pieces[worth] ?? '') ? undefined : words.countProblem}
            />
          ))}
        </div>
      ) : (
        <Field
          label={words.total}
          inputMode="decimal"
          value={draft.total}
          onChange={(event) => change({ total: event.target.value })}
          problem={isTried && counted === undefined ? words.moneyProblem : problems.countedMinorUnits}
        />
      )}
      {people.length > 0 ? (
        <Choice
          label={words.with}
          value={draft.with}
          options={[{ value: '', name: words.alone }, ...people]}
          onChange={(value) => change({ with: value })}
          problem={problems.countedWithPersonId}
        />
      ) : null}
      {needsReason ? (
        <Field
          label={words.why}
          hint={words.whyHint}
          value={draft.reason}
          maxLength={500}
          onChange={(event) => change({ reason: event.target.value })}
          problem={problems.reason ?? (isTried && draft.reason.trim() === '' ? words.why : undefined)}
        />
      ) : null}
      <NextStep>
        <Figures
          rows={[
            { name: words.expected, value: format.money(tin.expectedMinorUnits) },
            { name: words.counted, value: counted === undefined ? '–' : format.money(counted) },
            { name: words.difference, value: difference === undefined ? '–' : format.money(difference) },
          ]}
        />
        {isTried && counted === undefined && how === 'pieces' ? (
          <p className="said watch-said" role="alert">
            {words.nothingCounted}
          </p>
        ) : null}
        <WhatItPosts difference={difference} expected={tin.expectedMinorUnits} />
        {hasMoved ? (
          <p className="said watch-said" role="alert">
            {words.moved(format.money(tin.expectedMinorUnits))}
          </p>
        ) : null}
        {keeping.error && !isSaid ? <ProblemSaid error={keeping.error} /> : null}
        {keeping.isSuccess ? (
          <p className="said well-said" role="status">
            {words.kept}
          </p>
        ) : null}
        <div className="actions">
          <button type="submit" className="btn go" disabled={keeping.isPending}>
            {words.keep}
          </button>
        </div>
      </NextStep>
    </Form>
  );
}

function WhatItPosts({ difference, expected }: { difference: number | undefined; expected: number }) {
  const words = useTinText();
  const { format } = useHouse();
  if (difference === undefined) return null;
  if (difference === 0) return <p>{words.agreesWords(format.money(expected))}</p>;
  const amount = format.money(Math.abs(difference));
  return <p>{difference < 0 ? words.shortWords(amount) : words.overWords(amount)}</p>;
}

type Draft = typeof START;

const piecesOf = (draft: Draft, tin: TinBody) =>
  tin.pieces.flatMap((eachMinorUnits) => {
    const count = Number(draft.pieces[eachMinorUnits] ?? '');
    return count > 0 ? [{ eachMinorUnits, count }] : [];
  });

/** What was counted so far; undefined while nothing is typed, or something that is no number. */
function readCount(how: Draft['how'], draft: Draft, tin: TinBody): number | undefined {
  if (how === 'total') {
    const read = parseMoney(draft.total, tin.currency);
    return 'minorUnits' in read ? read.minorUnits : undefined;
  }
  const typed = Object.values(draft.pieces);
  if (typed.every((text) => text.trim() === '') || typed.some((text) => !isCount(text))) return undefined;
  return sumOf(piecesOf(draft, tin).map(({ eachMinorUnits, count }) => eachMinorUnits * count));
}
