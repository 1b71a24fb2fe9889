import { parseMoney } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Choice, Field, type Problems, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { partsTyped, shownPart } from '../../ui/parts-typed.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { Kind } from '../shelf/queries.ts';
import { suppliesQuery } from '../supplies/queries.ts';
import { draftTraits, NO_TRAITS, readTraits, type TraitDraft, TraitFields } from './trait-fields.tsx';
import { useKindText } from './words.ts';

const kindsOf = api.storehouses[':storehouse']['container-kinds'];

/** Sets what a kind weighs empty and what one costs; published kinds come without either. */
export function ChangeKind({ kinds }: { kinds: readonly Kind[] }) {
  const words = useKindText();
  const { format } = useHouse();
  const [chosen, setChosen] = useState(kinds[0]?.id ?? '');
  const kind = kinds.find(({ id }) => id === chosen);
  return (
    <details>
      <summary>{words.changeIt}</summary>
      <div className="stack">
        <Choice
          label={words.which}
          value={chosen}
          options={kinds.map((one) => ({ value: one.id, name: nameIn(format.language, one) }))}
          onChange={setChosen}
        />
        {kind ? <KindForm key={`${kind.id} ${kind.version}`} kind={kind} /> : null}
      </div>
    </details>
  );
}

function KindForm({ kind }: { kind: Kind }) {
  const t = useText();
  const words = useKindText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { tare, price, traits },
    change,
    forget,
  } = useDraft(
    `container-kind.${kind.id}`,
    {
      tare: shownPart(kind.tareGrams, 1),
      price: kind.priceMinorUnits === null ? '' : format.money(kind.priceMinorUnits),
      traits: draftTraits(kind),
    },
    { version: kind.version },
  );
  const read = { tareGrams: partsTyped(tare, 1), priceMinorUnits: moneyTyped(price, format.currency) };
  const saving = useMutation({
    mutationFn: () => {
      const figures = read as { tareGrams: null; priceMinorUnits: null };
      const own = kind.isOwn && traits.traitsSource.trim() !== '' ? { traits: readTraits(traits) } : {};
      const json = { version: kind.version, ...figures, ...own };
      return ask(kindsOf[':kind'].$put({ param: { storehouse, kind: kind.id }, json }));
    },
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['container-kinds'] });
    },
  });
  const name = nameIn(format.language, kind);
  return (
    <Form
      label={words.change(name)}
      onSend={() => {
        if (Object.values(read).every((value) => value !== undefined)) saving.mutate();
      }}
    >
      <Figures
        tare={tare}
        price={price}
        kindId={kind.id}
        onTare={(tare) => change({ tare })}
        onPrice={(price) => change({ price })}
        problems={{ ...problemsOf(saving.error), ...figureProblems(read, words) }}
      />
      {kind.isOwn ? <TraitFields draft={traits} onChange={(traits) => change({ traits })} /> : null}
      <ProblemSaid error={saving.error} />
      <button type="submit" className="btn" disabled={saving.isPending}>
        {t.save}
      </button>
    </Form>
  );
}

const EMPTY = { nameEn: '', nameEs: '', kindCode: '', litres: '', tare: '', price: '', source: '' };

/** A kind of the group's own, with where its capacity comes from. */
export function AddKind() {
  const words = useKindText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { traits, ...draft },
    change,
    reset,
  } = useDraft('container-kind', { ...EMPTY, traits: NO_TRAITS as TraitDraft });
  const [isAsked, setIsAsked] = useState(false);
  const read = {
    capacityMicrolitres: partsTyped(draft.litres, 1_000_000) ?? undefined,
    tareGrams: partsTyped(draft.tare, 1),
    priceMinorUnits: moneyTyped(draft.price, format.currency),
  };
  const adding = useMutation({
    mutationFn: (capacityMicrolitres: number) => {
      const { nameEn, nameEs, kindCode, source } = draft;
      const figures = read as { tareGrams: null; priceMinorUnits: null };
      const said = traits.traitsSource.trim() === '' ? {} : { traits: readTraits(traits) };
      const names = { nameEn, ...(nameEs.trim() === '' ? {} : { nameEs }) };
      return ask(
        kindsOf.$post({
          param: { storehouse },
          json: { ...figures, ...names, kindCode, source, capacityMicrolitres, ...said },
        }),
      );
    },
    onSuccess: () => {
      reset();
      setIsAsked(false);
      return queries.invalidateQueries({ queryKey: ['container-kinds'] });
    },
  });
  const own = { ...nameProblems(draft, words), ...figureProblems(read, words) };
  const problems: Problems = { ...problemsOf(adding.error), ...(isAsked ? own : {}) };
  const send = () => {
    setIsAsked(true);
    const { capacityMicrolitres } = read;
    if (Object.keys(own).length === 0 && capacityMicrolitres !== undefined)
      adding.mutate(capacityMicrolitres);
  };
  const field = (
    key: keyof typeof EMPTY,
    label: string,
    more: { problem: string | undefined; hint?: string },
  ) => (
    <Field
      label={label}
      value={draft[key]}
      onChange={(event) => change({ [key]: event.target.value })}
      {...more}
    />
  );
  return (
    <details>
      <summary>{words.add}</summary>
      <Form label={words.add} onSend={send}>
        <div className="pair roomy">
          {field('nameEn', words.nameEn, { problem: problems.nameEn })}
          {field('nameEs', words.nameEs, { problem: problems.nameEs })}
          {field('kindCode', words.code, { hint: words.codeHint, problem: problems.kindCode })}
          {field('litres', words.holds, { problem: problems.capacityMicrolitres })}
        </div>
        <Figures
          tare={draft.tare}
          price={draft.price}
          onTare={(tare) => change({ tare })}
          onPrice={(price) => change({ price })}
          problems={problems}
        />
        {field('source', words.source, { hint: words.sourceHint, problem: problems.source })}
        <TraitFields draft={traits} onChange={(traits) => change({ traits })} />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={adding.error} />}
        <button type="submit" className="btn" disabled={adding.isPending}>
          {words.addIt}
        </button>
      </Form>
    </details>
  );
}

function Figures({
  kindId,
  tare,
  price,
  onTare,
  onPrice,
  problems,
}: {
  kindId?: string;
  tare: string;
  price: string;
  onTare: (text: string) => void;
  onPrice: (text: string) => void;
  problems: Problems;
}) {
  const words = useKindText();
  const { format } = useHouse();
  return (
    <div className="pair">
      <Field
        label={words.tare}
        inputMode="numeric"
        value={tare}
        onChange={(event) => onTare(event.target.value)}
        problem={problems.tareGrams}
      />
      <Field
        label={words.price(format.currency)}
        inputMode="decimal"
        value={price}
        onChange={(event) => onPrice(event.target.value)}
        problem={problems.priceMinorUnits}
      />
      {kindId === undefined ? null : <ListedPrice kindId={kindId} />}
    </div>
  );
}

/** Where the supplies list prices a kind, that counts and is changed there. */
function ListedPrice({ kindId }: { kindId: string }) {
  const words = useKindText();
  const { storehouse, format } = useHouse();
  const { data } = useQuery(suppliesQuery({ storehouse }));
  const listed = (data?.supplies ?? []).find(
    (supply) =>
      supply.kind === 'container' && supply.containerKind?.id === kindId && supply.packMinorUnits !== null,
  );
  if (!listed) return null;
  return (
    <p className="soft">
      {words.listedPrice(format.count(listed.packPieces), format.money(listed.packMinorUnits ?? 0))}{' '}
      <Link to="/s/$storehouse/packing/supplies" params={{ storehouse }}>
        {words.toSupplies}
      </Link>
    </p>
  );
}

type KindText = ReturnType<typeof useKindText>;

function figureProblems(read: { tareGrams: unknown; priceMinorUnits: unknown }, words: KindText): Problems {
  return {
    ...('capacityMicrolitres' in read && read.capacityMicrolitres === undefined
      ? { capacityMicrolitres: words.litresProblem }
      : {}),
    ...(read.tareGrams === undefined ? { tareGrams: words.gramsProblem } : {}),
    ...(read.priceMinorUnits === undefined ? { priceMinorUnits: words.moneyProblem } : {}),
  };
}

function nameProblems(draft: typeof EMPTY, words: KindText): Problems {
  return {
    ...(draft.nameEn.trim() === '' ? { nameEn: words.nameProblem } : {}),
    ...(/^[a-z0-9]+(-[a-z0-9]+)*$/.test(draft.kindCode) ? {} : { kindCode: words.codeProblem }),
    ...(draft.source.trim() === '' ? { source: words.sourceProblem } : {}),
  };
}

/** Nothing typed is nothing known, and `undefined` is no money. */
function moneyTyped(text: string, currency: string): number | null | undefined {
  if (text.trim() === '') return null;
  const money = parseMoney(text, currency);
  return 'minorUnits' in money ? money.minorUnits : undefined;
}
