import { parseMass } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import type { buyQuery } from '../../api/queries.ts';
import { useTaste } from '../../text/taste.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type FoundPaper, helpingQuery } from './queries.ts';
import { usePaperText } from './words.ts';
import { type When, WrittenWhen, writtenAtOf } from './written-when.tsx';

export type BuyOfPaper = Awaited<ReturnType<NonNullable<ReturnType<typeof buyQuery>['queryFn']>>>;
type Typed = { least: string; wanted: string; most: string; wholeBags: boolean };
type Draft = When & { household: string; rows: Readonly<Record<string, Typed>> };

const EMPTY: Typed = { least: '', wanted: '', most: '', wholeBags: false };
const pledges = api.storehouses[':storehouse'].buys[':buy'].pledges;

/** Grams of a typed mass; nothing typed is null, and no mass undefined. */
function gramsOf(text: string, unit: 'lb' | 'kg'): number | null | undefined {
  if (text.trim() === '') return null;
  const mass = parseMass(text, { defaultUnit: unit });
  if ('problem' in mass) return mass.problem === 'zero' ? 0 : undefined;
  return mass.grams;
}

/** A pledge slip as a pen filled it in, for one's own household or one that is helped. */
export function KeySlip({ buy, paper }: { buy: BuyOfPaper; paper: FoundPaper }) {
  const words = usePaperText();
  const { storehouse, household, householdName } = useHouse();
  const helping = useQuery(helpingQuery({ storehouse }));
  const helped = (helping.data?.helpers ?? []).filter(({ isInForce }) => isInForce);
  const households = [
    ...(household === null ? [] : [{ value: household, name: householdName }]),
    ...helped.map((grant) => ({ value: grant.householdId, name: grant.householdName })),
  ];
  if (buy.stage !== 'gathering') return <p className="soft">{words.notGathering}</p>;
  if (households.length === 0) return null;
  return <SlipForm {...{ buy, paper, households }} />;
}

function SlipForm({
  buy,
  paper,
  households,
}: {
  buy: BuyOfPaper;
  paper: FoundPaper;
  households: readonly { value: string; name: string }[];
}) {
  const words = usePaperText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const own = households.find(({ value }) => value === paper.householdId) ?? households[0];
  const start: Draft = { household: own?.value ?? '', day: '', time: '', rows: {} };
  const { draft, change, reset } = useDraft<Draft>(`key-slip.${paper.code}`, start, {
    rows: { rows: EMPTY },
  });
  const [done, setDone] = useState(0);
  const rowOf = (line: string) => draft.rows[line] ?? EMPTY;
  const wanted = buy.lines.filter(({ id }) => rowOf(id).wanted.trim() !== '');
  const writtenAt = writtenAtOf(draft);
  const name = households.find(({ value }) => value === draft.household)?.name ?? '';
  const keying = useMutation({
    mutationFn: async () => {
      const rows = { ...draft.rows };
      for (const line of wanted) {
        const body = { ...bodyOf(line, rowOf(line.id)), writtenAt, paperCode: paper.code };
        await askOnce(`key-slip.${paper.code}.${line.id}`, { ...body, for: draft.household }, (headers) =>
          pledges.$post(
            { param: { storehouse, buy: buy.id }, json: body },
            { headers: { ...headers, 'Sheafbook-For-Household': draft.household } },
          ),
        );
        delete rows[line.id]; // what is keyed in is not keyed twice when a later food is refused
        change({ rows });
      }
      return wanted.length;
    },
    onSuccess: async (count) => {
      setDone(count);
      reset(start);
    },
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', { storehouse, buy: buy.id }] }),
  });
  const problems = problemsOf(keying.error);
  return (
    <Form
      onSend={() => {
        setDone(0);
        keying.mutate();
      }}
    >
      <h2>{words.keySlip(buy.name)}</h2>
      {done > 0 ? <p role="status">{words.keyed(done)}</p> : null}
      <Choice
        label={words.forHousehold}
        value={draft.household}
        options={households}
        onChange={(next) => change({ household: next })}
      />
      <WrittenWhen when={draft} onChange={change} problem={problems.writtenAt} />
      {buy.lines.map((line) => (
        <SlipRow
          key={line.id}
          line={line}
          row={rowOf(line.id)}
          problems={problems}
          onChange={(part) => change({ rows: { ...draft.rows, [line.id]: { ...rowOf(line.id), ...part } } })}
        />
      ))}
      <NextStep>
        <p>{writtenAt === undefined ? words.whenNeeded : words.keySlipPosts(name)}</p>
        <ProblemSaid error={keying.error} />
        <button
          type="submit"
          className="btn go"
          disabled={keying.isPending || writtenAt === undefined || wanted.length === 0 || isWrong(buy, draft)}
        >
          {words.keyIn}
        </button>
      </NextStep>
    </Form>
  );
}

type Line = BuyOfPaper['lines'][number];
const unitOf = (line: Line) => (line.massUnit === 'kg' ? 'kg' : 'lb');

const isWrong = (buy: BuyOfPaper, draft: Draft): boolean =>
  buy.lines.some((line) => {
    const row = draft.rows[line.id] ?? EMPTY;
    return [row.least, row.wanted, row.most].some((text) => gramsOf(text, unitOf(line)) === undefined);
  });

/** Least and most that the pen left out are what is wanted. */
function bodyOf(line: Line, row: Typed) {
  const unit = unitOf(line);
  const wantedGrams = gramsOf(row.wanted, unit) ?? 0;
  return {
    buyLineId: line.id,
    leastGrams: gramsOf(row.least, unit) ?? wantedGrams,
    wantedGrams,
    mostGrams: gramsOf(row.most, unit) ?? wantedGrams,
    wholeBags: row.wholeBags,
    asTyped: row.wanted.trim(),
  };
}

function SlipRow({
  line,
  row,
  problems,
  onChange,
}: {
  line: Line;
  row: Typed;
  problems: Readonly<Record<string, string>>;
  onChange: (part: Partial<Typed>) => void;
}) {
  const words = usePaperText();
  const { language } = useTaste();
  const food = nameIn(language, line.food);
  const field = (key: 'least' | 'wanted' | 'most', label: string) => (
    <Field
      label={label}
      inputMode="decimal"
      value={row[key]}
      onChange={(event) => onChange({ [key]: event.target.value })}
      problem={
        gramsOf(row[key], unitOf(line)) === undefined
          ? words.massProblem
          : row.wanted === ''
            ? undefined
            : problems[`${key}Grams`]
      }
    />
  );
  return (
    <fieldset className="stack tight">
      <legend>
        {food} <span className="u">{line.massUnit}</span>
      </legend>
      <div className="pair three">
        {field('least', words.least)}
        {field('wanted', words.wanted)}
        {field('most', words.most)}
      </div>
      <Check label={words.wholeBags} isOn={row.wholeBags} onChange={(wholeBags) => onChange({ wholeBags })} />
    </fieldset>
  );
}
