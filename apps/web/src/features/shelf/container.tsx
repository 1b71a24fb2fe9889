import { spellCode } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { InferRequestType } from 'hono/client';
import { api, ask, askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { HowLong } from '../keeping/how-long.tsx';
import { LidOfJar } from '../lid/lid-of-jar.tsx';
import { treatmentsQuery } from '../treatment/queries.ts';
import { gramsTyped } from './mass-typed.ts';
import { containersQuery, OF_STOCK, type Shelved } from './queries.ts';
import { SayTreatment } from './say-treatment.tsx';
import { ToKitchen } from './to-kitchen.tsx';
import { WhoNot } from './who-not.tsx';
import { useShelfText } from './words.ts';
import './shelf.css';

const one = api.storehouses[':storehouse'].containers[':container'];
type Use = InferRequestType<typeof one.uses.$post>['json'];
const WAYS: readonly Use['to'][] = [
  'eaten',
  'given',
  'animals',
  'composted',
  'spilled',
  'sampled',
  'discarded',
];

/** One of one's own containers: what is in it, where it came from, and taking out of it. */
export function Container() {
  const param = useParams({ from: '/s/$storehouse/shelf/$container' });
  const reading = useQuery({ queryKey: ['container', param], queryFn: () => ask(one.$get({ param })) });
  const words = useShelfText();
  return (
    <>
      <Link className="who" to="/s/$storehouse/shelf" params={param}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={reading}>
        {(shelved) => <Sheet shelved={shelved} />}
      </Loaded>
    </>
  );
}

function Sheet({ shelved }: { shelved: Shelved }) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const food = nameIn(format.language, shelved.food);
  useTitle(food);
  const treatments = useQuery(treatmentsQuery(useParams({ from: '/s/$storehouse/shelf/$container' }))).data;
  const treatmentName = (code: string | null) =>
    treatments?.treatments.find((treatment) => treatment.code === code)?.names[format.language] ??
    words.treatmentUnknown;
  const others = useOthers(shelved);
  const { grams, openedOn, packedOn, originNote, code } = shelved;
  const facts = [
    { name: words.kind, value: nameIn(format.language, shelved.kind) },
    { name: words.packed, value: packedOn === null ? '' : format.day(packedOn) },
    { name: words.treated, value: treatmentName(shelved.treatment) },
    { name: words.opened, value: openedOn === null ? words.notOpened : format.day(openedOn) },
  ];
  return (
    <>
      <div className="row">
        <h1>{food}</h1>
        <span className="code">{spellCode(code)}</span>
      </div>
      {grams === 0 ? null : <WhoNot container={shelved.id} food={food} />}
      <p>{grams === 0 ? words.holdsNothing : words.holds(format.mass(grams), format.count(grams))}</p>
      <dl className="figures">
        {facts.map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {originNote === '' ? null : <p>{`${words.origin}: ${originNote}`}</p>}
      {grams === 0 ? null : (
        <SayTreatment key={`${shelved.treatment} ${shelved.moistureTenths}`} shelved={shelved} />
      )}
      {grams === 0 ? null : <HowLong container={shelved.id} lotIds={others.map(({ id }) => id)} />}
      {grams === 0 || !shelved.kind.code.startsWith('jar-') ? null : <LidOfJar container={shelved.id} />}
      <ToKitchen shelved={shelved} />
      {grams === 0 ? null : <TakeOut key={grams} shelved={shelved} />}
      {grams === 0 ? null : (
        <div className="actions">
          <Link
            className="btn"
            to="/s/$storehouse/inspections/$container"
            params={{ storehouse, container: shelved.id }}
          >
            {words.inspect}
          </Link>
          {shelved.openedOn !== null ? null : (
            <Link
              className="btn"
              to="/s/$storehouse/shelf/$container/offer"
              params={{ storehouse, container: shelved.id }}
            >
              {words.offer}
            </Link>
          )}
        </div>
      )}
      <Siblings shelved={shelved} />
    </>
  );
}

function TakeOut({ shelved }: { shelved: Shelved }) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const whole = format.mass(shelved.grams);
  const {
    draft: { way, text },
    change,
    forget,
  } = useDraft(
    `take-out.${shelved.id}`,
    { way: 'eaten' as Use['to'], text: whole },
    { version: shelved.grams },
  );
  // The text shows all of it rounded; unchanged it means every gram.
  const grams = text === whole ? shelved.grams : gramsTyped(text, format.massUnit);
  const isTooMuch = grams !== undefined && grams > shelved.grams;
  const taking = useMutation({
    mutationFn: (json: Use) =>
      askOnce(`use.${shelved.id}`, json, (header) =>
        one.uses.$post({ param: { storehouse, container: shelved.id }, json }, { headers: header }),
      ),
    onSuccess: () => {
      forget();
      return Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] })));
    },
  });
  const problems = problemsOf(taking.error);
  return (
    <NextStep title={words.takeTitle}>
      <Form
        onSend={() => {
          if (grams !== undefined && !isTooMuch) taking.mutate({ grams, to: way, note: '' });
        }}
      >
        <div className="pair">
          <Field
            label={words.takeMass}
            inputMode="decimal"
            value={text}
            onChange={(event) => change({ text: event.target.value })}
            problem={
              grams === undefined ? words.massProblem : isTooMuch ? words.tooMuch(whole) : problems.grams
            }
          />
          <Choice
            label={words.takeHow}
            value={way}
            options={WAYS.map((value) => ({ value, name: words.ways[value] ?? value }))}
            onChange={(value) => change({ way: value as Use['to'] })}
          />
        </div>
        {grams === undefined || isTooMuch ? null : (
          <p>
            {words.takeSays(format.mass(grams), words.ways[way] ?? way, format.mass(shelved.grams - grams))}{' '}
            {shelved.openedOn === null ? words.opensIt : null}
          </p>
        )}
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={taking.error} />}
        <button type="submit" className="btn go" disabled={taking.isPending}>
          {words.take}
        </button>
      </Form>
    </NextStep>
  );
}

/** What else of the lot holds something. */
function useOthers({ lotId, id }: Shelved): Shelved[] {
  const { storehouse } = useHouse();
  const all = useQuery(containersQuery({ storehouse })).data ?? [];
  return all.filter((other) => other.lotId === lotId && other.id !== id && other.grams > 0);
}

/** The other containers of the same lot, since what happens to one is worth knowing of all. */
function Siblings({ shelved }: { shelved: Shelved }) {
  const words = useShelfText();
  const { storehouse } = useHouse();
  const others = useOthers(shelved);
  if (others.length === 0) return null;
  return (
    <section>
      <h2>{words.others(others.length)}</h2>
      <nav className="codes" aria-label={words.others(others.length)}>
        {others.map(({ id, code }) => (
          <Link
            key={id}
            className="btn quiet"
            to="/s/$storehouse/shelf/$container"
            params={{ storehouse, container: id }}
          >
            {spellCode(code)}
          </Link>
        ))}
      </nav>
    </section>
  );
}
