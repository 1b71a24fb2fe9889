import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check, Field, type Problems, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { cardOf, draftOf } from './card-draft.ts';
import { CardFields } from './card-form.tsx';
import { inside, type Pantry } from './queries.ts';
import { useGivingText } from './words.ts';

const METRES = { lb: 1609.344, kg: 1000 } as const; // whoever weighs in pounds counts in miles
const NAMES = { lb: 'mi', kg: 'km' } as const;

/** Metres from what was typed, or `undefined` where that is no distance. */
function metresTyped(text: string, unit: 'lb' | 'kg'): number | undefined {
  const plain = text.trim().replace(',', '.');
  return /^\d{1,4}(\.\d{1,2})?$/.test(plain) ? Math.round(Number(plain) * METRES[unit]) : undefined;
}

type Facts = {
  name: string;
  address: string;
  timeZone: string;
  contactDuty: string;
  contact: string;
  distance: string;
};

function factsOf(pantry: Pantry | null, unit: 'lb' | 'kg', timeZone: string): Facts {
  return {
    name: pantry?.name ?? '',
    address: pantry?.address ?? '',
    timeZone: pantry?.timeZone ?? timeZone,
    contactDuty: pantry?.contactDuty ?? '',
    contact: pantry?.contact ?? '',
    distance: pantry ? String(Math.round((pantry.distanceMetres / METRES[unit]) * 100) / 100) : '',
  };
}

function PantryFields({
  facts,
  change,
  problems,
  isTried,
}: {
  facts: Facts;
  change: (part: Partial<Facts>) => void;
  problems: Problems;
  isTried: boolean;
}) {
  const words = useGivingText();
  const { massDisplay } = useHouse();
  const field = (key: keyof Facts, label: string, problem = problems[key]) => (
    <Field
      label={label}
      value={facts[key]}
      problem={problem}
      onChange={(event) => change({ [key]: event.target.value })}
    />
  );
  const isFar = isTried && metresTyped(facts.distance, massDisplay) === undefined;
  return (
    <>
      {field('name', words.name)}
      {field('address', words.address)}
      {field('contactDuty', words.contactDuty)}
      {field('contact', words.contact)}
      {field('distance', words.distance(NAMES[massDisplay]), isFar ? words.distanceProblem : undefined)}
      {field('timeZone', words.timeZone)}
    </>
  );
}

/** A pantry that the book does not know yet, with its first card. */
export function NewPantry() {
  const words = useGivingText();
  const { storehouse, massDisplay, format } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  useTitle(words.addPantry);
  const {
    draft: { facts, draft },
    change,
    forget,
  } = useDraft('pantry', {
    facts: factsOf(null, massDisplay, format.timeZone),
    draft: draftOf(null, format.today(), format.mass),
  });
  const [isTried, setIsTried] = useState(false);
  const card = cardOf(draft, { massUnit: massDisplay, massOf: format.mass }, null);
  const distanceMetres = metresTyped(facts.distance, massDisplay);
  const saving = useMutation({
    mutationFn: (wish: { card: NonNullable<typeof card>; distanceMetres: number }) => {
      const { distance: _typed, ...rest } = facts;
      return ask(inside.pantries.$post({ param: { storehouse }, json: { ...rest, ...wish } }));
    },
    onSuccess: async (saved) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['giving'] });
      await navigate({
        to: '/s/$storehouse/giving/pantries/$pantry',
        params: { storehouse, pantry: saved.id },
      });
    },
  });
  const problems = problemsOf(saving.error);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving/pantries" params={{ storehouse }}>
        <BackIcon />
        {words.pantries}
      </Link>
      <h1>{words.addPantry}</h1>
      <Form
        label={words.addPantry}
        onSend={() => {
          setIsTried(true);
          if (card && distanceMetres !== undefined) saving.mutate({ card, distanceMetres });
        }}
      >
        <PantryFields
          facts={facts}
          change={(part) => change({ facts: { ...facts, ...part } })}
          problems={problems}
          isTried={isTried}
        />
        <CardFields
          draft={draft}
          change={(part) => change({ draft: { ...draft, ...part } })}
          problems={problems}
          isTried={isTried}
        />
        <ProblemSaid error={saving.error} />
        <button type="submit" className="btn go" disabled={saving.isPending}>
          {words.addPantry}
        </button>
      </Form>
    </>
  );
}

/** Name, door and contact of a pantry, and whether it is still gone to. */
export function EditPantry({ pantry }: { pantry: Pantry }) {
  const t = useText();
  const words = useGivingText();
  const { storehouse, massDisplay, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { facts, isRetired },
    change,
    forget,
  } = useDraft(
    `pantry.${pantry.id}`,
    { facts: factsOf(pantry, massDisplay, format.timeZone), isRetired: pantry.isRetired },
    { version: pantry.version },
  );
  const [isTried, setIsTried] = useState(false);
  const distanceMetres = metresTyped(facts.distance, massDisplay);
  const saving = useMutation({
    mutationFn: (metres: number) => {
      const { distance: _typed, ...rest } = facts;
      return ask(
        inside.pantries[':pantry'].$put({
          param: { storehouse, pantry: pantry.id },
          json: { ...rest, distanceMetres: metres, isRetired, version: pantry.version },
        }),
      );
    },
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['giving'] });
    },
  });
  return (
    <Form
      label={words.changePantry}
      onSend={() => {
        setIsTried(true);
        if (distanceMetres !== undefined) saving.mutate(distanceMetres);
      }}
    >
      <PantryFields
        facts={facts}
        change={(part) => change({ facts: { ...facts, ...part } })}
        problems={problemsOf(saving.error)}
        isTried={isTried}
      />
      <Check label={words.isRetired} isOn={isRetired} onChange={(isRetired) => change({ isRetired })} />
      <ProblemSaid error={saving.error} />
      <button type="submit" className="btn" disabled={saving.isPending}>
        {t.save}
      </button>
    </Form>
  );
}

/** A newer card beside the old ones; asking again and hearing the same is one too. */
export function RenewCard({ pantry }: { pantry: Pantry }) {
  const words = useGivingText();
  const { storehouse, massDisplay, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { draft },
    change,
    forget,
  } = useDraft(
    `pantry-card.${pantry.id}`,
    { draft: draftOf(pantry.card, format.today(), format.mass) },
    { version: pantry.card.version },
  );
  const [isTried, setIsTried] = useState(false);
  const card = cardOf(draft, { massUnit: massDisplay, massOf: format.mass }, pantry.card);
  const saving = useMutation({
    mutationFn: (written: NonNullable<typeof card>) =>
      ask(
        inside.pantries[':pantry'].card.$put({
          param: { storehouse, pantry: pantry.id },
          json: { version: pantry.card.version, card: written },
        }),
      ),
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['giving'] });
    },
  });
  return (
    <Form
      label={words.newCard}
      onSend={() => {
        setIsTried(true);
        if (card) saving.mutate(card);
      }}
    >
      <CardFields
        draft={draft}
        change={(part) => change({ draft: { ...draft, ...part } })}
        problems={problemsOf(saving.error)}
        isTried={isTried}
      />
      <ProblemSaid error={saving.error} />
      <button type="submit" className="btn go" disabled={saving.isPending}>
        {words.writeCard}
      </button>
    </Form>
  );
}
