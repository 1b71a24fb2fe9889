import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { type Named, nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { gramsTyped } from '../shelf/mass-typed.ts';
import { type Kind, kindsQuery, type OwnBag, ownBagsQuery } from '../shelf/queries.ts';
import { type Treatment, treatmentsQuery } from '../treatment/queries.ts';
import { nearestOf, TakeNearest } from './nearest.tsx';
import { ofSession, type SessionPage, sessionApi } from './queries.ts';
import { usePackingText } from './words.ts';

type Wish = SessionPage['wishes'][number];

/** What the household wants packed, line by line; each change is said to the book as a whole. */
export function WishesForm({ page, isOpen }: { page: SessionPage; isOpen: boolean }) {
  const t = usePackingText();
  const { storehouse } = useHouse();
  const bags = useQuery(ownBagsQuery({ storehouse }));
  const kinds = useQuery(kindsQuery({ storehouse }));
  const treatments = useQuery(treatmentsQuery({ storehouse }));
  return (
    <section className="stack">
      <h2>{t.wishes}</h2>
      {page.wishes.length === 0 ? (
        <p className="soft">{isOpen ? t.noWishes : t.noWishesThen}</p>
      ) : (
        <WishList page={page} isOpen={isOpen} />
      )}
      {isOpen ? (
        <Loaded reading={joined(bags, joined(kinds, treatments))}>
          {([{ bags: own }, [{ containerKinds }, book]]) =>
            own.length === 0 ? (
              <p>{t.noBags}</p>
            ) : (
              <AddWish page={page} bags={own} kinds={containerKinds} treatments={book.treatments} />
            )
          }
        </Loaded>
      ) : null}
    </section>
  );
}

function useChangeWishes(page: SessionPage) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session: page.session.id };
  return useMutation({
    mutationFn: (wishes: readonly WishBody[]) =>
      ask(sessionApi.wishes.$put({ param, json: { wishes: [...wishes] } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
  });
}

type WishBody = {
  foodId: string;
  containerKindId: string;
  treatment: TreatmentCode;
  containers: number;
  gramsEach: number;
  mayMix: boolean;
};

type TreatmentCode = Treatment['code'];

const bodyOf = ({ food, kind, treatment, containers, gramsEach, mayMix }: Wish): WishBody => ({
  ...{ foodId: food.id, containerKindId: kind.id, containers, gramsEach, mayMix },
  treatment: treatment as TreatmentCode,
});

function WishList({ page, isOpen }: { page: SessionPage; isOpen: boolean }) {
  const t = usePackingText();
  const { storehouse, format } = useHouse();
  const changing = useChangeWishes(page);
  const treatments = useQuery(treatmentsQuery({ storehouse }));
  const treatmentOf = (code: string) =>
    treatments.data?.treatments.find((treatment) => treatment.code === code)?.names[format.language] ?? '';
  const nameOf = (of: Named) => nameIn(format.language, of);
  return (
    <>
      <Ledger
        caption={t.wishes}
        columns={[
          { name: t.food },
          { name: t.containers, isNumber: true },
          { name: t.each, isNumber: true },
          { name: t.inAll, isNumber: true },
        ]}
        rows={page.wishes.map((wish) => ({
          key: wish.id,
          cells: [
            <span key="food">
              {nameOf(wish.food)}
              <span className="soft block">{`${nameOf(wish.kind)}, ${treatmentOf(wish.treatment)}`}</span>
              {wish.mayMix ? <span className="soft block">{t.mixable}</span> : null}
              {isOpen ? (
                <button
                  type="button"
                  className="btn quiet"
                  disabled={changing.isPending}
                  aria-label={t.dropOf(nameOf(wish.food))}
                  onClick={() => changing.mutate(page.wishes.filter(({ id }) => id !== wish.id).map(bodyOf))}
                >
                  {t.drop}
                </button>
              ) : null}
            </span>,
            format.count(wish.containers),
            format.mass(wish.gramsEach),
            format.mass(wish.containers * wish.gramsEach),
          ],
        }))}
      />
      {page.wishes
        .filter(({ warnings }) => warnings.length > 0)
        .map((wish) => (
          <p key={wish.id} className="said watch-said">
            <span className="block">{nameOf(wish.food)}</span>
            {wish.warnings.join(' ')}
          </p>
        ))}
      <ProblemSaid error={changing.error} />
    </>
  );
}

const START = {
  ...{ foodId: '', kindId: '', treatment: 'oxygen-absorber', containers: '', each: '' },
  mayMix: false,
};

function AddWish({
  page,
  bags,
  kinds,
  treatments,
}: {
  page: SessionPage;
  bags: readonly OwnBag[];
  kinds: readonly Kind[];
  treatments: readonly Treatment[];
}) {
  const t = usePackingText();
  const { format } = useHouse();
  const [isAsked, setIsAsked] = useState(false);
  const { draft, change, reset } = useDraft(`packing-wish.${page.session.id}`, START);
  const changing = useChangeWishes(page);
  const foods = [...new Map(bags.map(({ food }) => [food.id, food])).values()];
  const food = foods.find(({ id }) => id === draft.foodId) ?? foods[0];
  const kind =
    kinds.find(({ id }) => id === draft.kindId) ??
    kinds.find(({ kindCode }) => kindCode === 'can-no-10') ??
    kinds[0];
  const containers = /^\d+$/.test(draft.containers.trim()) ? Number(draft.containers) : 0;
  const gramsEach = gramsTyped(draft.each, format.massUnit);
  const owned = page.ownGrams.find(({ foodId }) => foodId === food?.id)?.grams ?? 0;
  const at = page.wishes.length;
  const problems = problemsOf(changing.error);
  if (!food || !kind) return null;
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (containers === 0 || gramsEach === undefined) return;
        const { id: foodId } = food;
        const treatment = draft.treatment as TreatmentCode;
        const { mayMix } = draft;
        const added = { foodId, containerKindId: kind.id, treatment, containers, gramsEach, mayMix };
        changing.mutate([...page.wishes.map(bodyOf), added], {
          onSuccess: () => {
            reset(START);
            setIsAsked(false);
          },
        });
      }}
    >
      <h3>{t.addWish}</h3>
      <div className="pair roomy">
        <Choice
          label={t.food}
          value={food.id}
          options={foods.map((one) => ({ value: one.id, name: nameIn(format.language, one) }))}
          onChange={(foodId) => change({ foodId })}
        />
        <Choice
          label={t.kind}
          value={kind.id}
          options={kinds.map((one) => ({ value: one.id, name: nameIn(format.language, one) }))}
          onChange={(kindId) => change({ kindId })}
        />
        <Choice
          label={t.treatment}
          value={draft.treatment}
          options={treatments.map(({ code, names }) => ({ value: code, name: names[format.language] }))}
          onChange={(treatment) => change({ treatment })}
          problem={problems[`wishes.${at}.treatment`]}
        />
      </div>
      <div className="pair">
        <Field
          label={t.containers}
          inputMode="numeric"
          value={draft.containers}
          onChange={(event) => change({ containers: event.target.value })}
          problem={isAsked && containers === 0 ? t.countProblem : problems[`wishes.${at}.containers`]}
        />
        <Field
          label={t.each}
          hint={t.owned(format.mass(owned))}
          value={draft.each}
          onChange={(event) => change({ each: event.target.value })}
          problem={isAsked && gramsEach === undefined ? t.massProblem : problems[`wishes.${at}.gramsEach`]}
        />
      </div>
      <Check label={t.mayMix} isOn={draft.mayMix} onChange={(mayMix) => change({ mayMix })} />
      {draft.mayMix ? <p className="soft">{t.mayMixSays}</p> : null}
      <TakeNearest
        nearest={nearestOf(changing.error)}
        onTake={({ containerKindId = kind.id, treatment = 'none', gramsEach: grams = 0 }) => {
          change({
            kindId: containerKindId,
            treatment,
            ...(grams === gramsEach ? {} : { each: `${grams} g` }),
          });
          changing.reset();
        }}
      />
      {containers > 0 && gramsEach !== undefined ? (
        <p>{t.wishSays(containers, format.mass(containers * gramsEach), format.mass(owned))}</p>
      ) : null}
      <Cautions treatment={treatments.find(({ code }) => code === draft.treatment)} />
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={changing.error} />}
      <div className="actions">
        <button type="submit" className="btn go" disabled={changing.isPending}>
          {t.add}
        </button>
      </div>
    </Form>
  );
}

/** What can hurt somebody with this treatment, with whose word comes before ours. */
function Cautions({ treatment }: { treatment: Treatment | undefined }) {
  const { format } = useHouse();
  return (
    <>
      {(treatment?.cautions ?? []).map(({ code, say, deferTo }) => (
        <p key={code} className="said watch-said">
          {say[format.language]} <span className="soft block">{deferTo[format.language]}</span>
        </p>
      ))}
    </>
  );
}
