import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import type { InferRequestType } from 'hono/client';
import { ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { gramsTyped } from '../shelf/mass-typed.ts';
import { inside, keepsStore, type Place } from './queries.ts';
import { usePlaceText } from './words.ts';

type Facts = InferRequestType<typeof inside.places.$post>['json'];

/** A place that the book does not know yet. */
export function NewPlace() {
  const words = usePlaceText();
  const { storehouse } = useHouse();
  useTitle(words.add);
  return (
    <>
      <Link className="who" to="/s/$storehouse/places" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{words.add}</h1>
      <PlaceForm />
    </>
  );
}

const said = (value: boolean | null | undefined) => (value ? 'yes' : value === false ? 'no' : '');
const read = (value: string) => (value === '' ? null : value === 'yes');

/** What a place is called and is like; what nobody knows is left open. */
export function PlaceForm({ place }: { place?: Place }) {
  const t = useText();
  const words = usePlaceText();
  const house = useHouse();
  const { storehouse } = house;
  const queries = useQueryClient();
  const navigate = useNavigate();
  const owners: Facts['of'][] = [
    ...(house.household === null ? [] : (['household'] as const)),
    ...(keepsStore(house) ? (['store'] as const) : []),
  ];
  const { format } = house;
  // Shown rounded; what nobody typed over stays to the gram.
  const shownMost = place?.mostGrams ? format.mass(place.mostGrams) : '';
  const { draft, change, forget } = useDraft(
    `place.${place?.id ?? 'new'}`,
    {
      of: owners[0] ?? ('household' as const),
      name: place?.name ?? '',
      kind: place?.kind ?? 'cellar',
      isLit: said(place?.isLit),
      isDamp: said(place?.isDamp),
      isRodentProof: said(place?.isRodentProof),
      most: shownMost,
    },
    { version: place?.version ?? 0 },
  );
  const isMostKept = draft.most === shownMost;
  const most = isMostKept ? place?.mostGrams : gramsTyped(draft.most, format.massUnit);
  const isMostTyped = isMostKept || draft.most.trim() === '' || most !== undefined;
  const saving = useMutation({
    mutationFn: () => {
      const { of, name, kind, ...open } = draft;
      const facts = {
        name,
        kind: kind as Facts['kind'],
        isLit: read(open.isLit),
        isDamp: read(open.isDamp),
        isRodentProof: read(open.isRodentProof),
        mostGrams: most ?? null,
      };
      return place
        ? ask(
            inside.places[':place'].$put({
              param: { storehouse, place: place.id },
              json: { ...facts, version: place.version },
            }),
          )
        : ask(inside.places.$post({ param: { storehouse }, json: { of, ...facts } }));
    },
    onSuccess: async (saved) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['places'] });
      await navigate({ to: '/s/$storehouse/places/$place', params: { storehouse, place: saved.id } });
    },
  });
  const problems = problemsOf(saving.error);
  const open = (key: 'isLit' | 'isDamp' | 'isRodentProof', label: string) => (
    <Choice
      label={label}
      value={draft[key]}
      options={[
        { value: '', name: words.nobodyKnows },
        { value: 'no', name: words.no },
        { value: 'yes', name: words.yes },
      ]}
      onChange={(value) => change({ [key]: value })}
    />
  );
  return (
    <Form onSend={() => (isMostTyped ? saving.mutate() : undefined)}>
      {place || owners.length < 2 ? null : (
        <Choice
          label={words.whose}
          value={draft.of}
          options={owners.map((value) => ({ value, name: words.owners[value] }))}
          onChange={(of) => change({ of: of as Facts['of'] })}
        />
      )}
      <div className="pair">
        <Field
          label={words.name}
          value={draft.name}
          onChange={(event) => change({ name: event.target.value })}
          problem={problems.name}
        />
        <Choice
          label={words.kind}
          value={draft.kind}
          options={Object.entries(words.kinds).map(([value, name]) => ({ value, name }))}
          onChange={(kind) => change({ kind })}
        />
      </div>
      {open('isLit', words.isLit)}
      {open('isDamp', words.isDamp)}
      {open('isRodentProof', words.isRodentProof)}
      <Field
        label={words.most(format.massUnit)}
        hint={words.mostHint}
        inputMode="decimal"
        value={draft.most}
        onChange={(event) => change({ most: event.target.value })}
        problem={isMostTyped ? problems.mostGrams : words.mostProblem}
      />
      {problems.name || problems.mostGrams ? null : <ProblemSaid error={saving.error} />}
      <div>
        <button type="submit" className="btn go" disabled={saving.isPending}>
          {t.save}
        </button>
      </div>
    </Form>
  );
}
