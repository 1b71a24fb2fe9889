import { spellCode } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger, NextStep, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { HillsPicture } from '../rotation/hills-picture.tsx';
import { storeRotationQuery } from '../rotation/queries.ts';
import { FactsForm } from './facts-form.tsx';
import {
  gives,
  inside,
  kindNamed,
  type Manifest,
  manifestsQuery,
  named,
  type Queued,
  queueQuery,
  seesStoreRisk,
} from './queries.ts';
import { useGivingText } from './words.ts';

const PAPERS = [
  { kind: 'shelf-list', path: 'shelf/papers/list?of=common' },
  { kind: 'eat-first-list', path: 'shelf/papers/eat-first?of=common' },
];

/** What has to be given soon, where to, and what is on its way. */
export function Giving() {
  const words = useGivingText();
  const house = useHouse();
  const { storehouse, format } = house;
  useTitle(words.title);
  const reading = joined(useQuery(queueQuery({ storehouse })), useQuery(manifestsQuery({ storehouse })));
  return (
    <Loaded isPage reading={reading}>
      {([{ containers }, { manifests }]) => {
        const soon = containers.filter(({ isDue, outOn }) => isDue && outOn === null);
        const due = soon.filter(({ steps }) => steps.includes('pantry'));
        const tooLate = soon.filter(({ steps }) => !steps.includes('pantry'));
        const massOf = (rows: readonly Queued[]) =>
          format.mass(rows.reduce((sum, { grams }) => sum + grams, 0));
        return (
          <>
            <h1>{due.length === 0 ? words.nothingDue : words.due(due.length, massOf(due))}</h1>
            <p>{words.opening}</p>
            {tooLate.length > 0 ? <p>{words.tooLate(tooLate.length, massOf(tooLate))}</p> : null}
            {due.length > 0 && gives(house) ? (
              <NextStep title={words.toPantry}>
                <Link className="btn go" to="/s/$storehouse/giving/match" params={{ storehouse }}>
                  {words.match}
                </Link>
              </NextStep>
            ) : null}
            {seesStoreRisk(house) ? <RiskAhead /> : null}
            <div className="actions">
              {due.length === 0 && gives(house) ? (
                <Link className="btn" to="/s/$storehouse/giving/match" params={{ storehouse }}>
                  {words.match}
                </Link>
              ) : null}
              <Link className="btn" to="/s/$storehouse/giving/pantries" params={{ storehouse }}>
                {words.pantries}
              </Link>
              {seesStoreRisk(house) ? (
                <Link className="btn" to="/s/$storehouse/giving/risk" params={{ storehouse }}>
                  {words.riskTitle}
                </Link>
              ) : null}
              {house.duties.includes('coordinator') ? (
                <Link className="btn" to="/s/$storehouse/giving/offers" params={{ storehouse }}>
                  {words.offers}
                </Link>
              ) : null}
              <Link className="btn" to="/s/$storehouse/giving/year" params={{ storehouse }}>
                {words.year}
              </Link>
            </div>
            <Manifests manifests={manifests} />
            <Queue rows={containers} />
            {gives(house) && containers.length > 0 ? (
              <>
                <FactsForm rows={containers} />
                <SendOn rows={containers.filter(({ outOn, isHeld }) => outOn === null && !isHeld)} />
              </>
            ) : null}
            <PaperLinks papers={PAPERS} />
          </>
        );
      }}
    </Loaded>
  );
}

/** The hills of common stock; what would change them is asked on their own page. */
function RiskAhead() {
  const words = useGivingText();
  const { storehouse } = useHouse();
  const { data } = useQuery(storeRotationQuery({ storehouse }, 'none'));
  if (!data || data.risk.grams === 0) return null;
  return (
    <section>
      <h2>{words.riskAhead}</h2>
      <HillsPicture now={data.risk.byMonth} other={null} />
    </section>
  );
}

function Manifests({ manifests }: { manifests: readonly Manifest[] }) {
  const words = useGivingText();
  const { storehouse, format } = useHouse();
  return (
    <section>
      <h2>{words.manifests}</h2>
      {manifests.length === 0 ? <p className="soft">{words.noManifests}</p> : null}
      <Searched
        items={manifests}
        wordsOf={({ number, pantry, onDay }) => `${words.manifest(number)} ${pantry} ${format.day(onDay)}`}
      >
        {(shown) => (
          <ul className="list">
            {shown.map((row) => (
              <li key={row.id}>
                <Link
                  to="/s/$storehouse/giving/manifests/$manifest"
                  params={{ storehouse, manifest: row.id }}
                >
                  <span>
                    <b>{words.manifest(row.number)}</b>
                    <br />
                    <span className="soft">
                      {row.pantry}, {format.day(row.onDay)}, {format.mass(row.grams)}
                    </span>
                  </span>
                  <State
                    kind={row.stage === 'received' ? 'well' : 'watch'}
                    word={words.stages[row.stage] ?? row.stage}
                  />
                </Link>
              </li>
            ))}
          </ul>
        )}
      </Searched>
    </section>
  );
}

function Queue({ rows }: { rows: readonly Queued[] }) {
  const words = useGivingText();
  const { format } = useHouse();
  if (rows.length === 0) return null;
  const nextOf = (row: Queued) => {
    if (row.outOn !== null) return words.outOn(row.outOn);
    if (row.steps.length === 0) return words.nowhere;
    const named = (steps: Queued['steps']) => steps.map((step) => words.steps[step] ?? step).join(', ');
    return row.afterLook.length === 0
      ? named(row.steps)
      : `${named(row.steps)}; ${words.afterLook(named(row.afterLook))}`;
  };
  return (
    <section className="stack">
      <h2>{words.queue}</h2>
      <Searched
        items={rows}
        wordsOf={(row) => `${row.code} ${named(row, format.language)} ${kindNamed(row, format.language)}`}
      >
        {(shown) => (
          <Ledger
            caption={words.queue}
            columns={[
              { name: words.container },
              { name: words.mass, isNumber: true },
              { name: words.closes },
              { name: words.next },
            ]}
            rows={shown.map((row) => ({
              key: row.id,
              cells: [
                <span key="what">
                  {spellCode(row.code)}
                  <span className="soft block">
                    {named(row, format.language)}, {kindNamed(row, format.language)}
                  </span>
                  {row.cameBack === null ? null : (
                    <span className="block">
                      {words.cameBackFrom(
                        row.cameBack.pantry,
                        row.cameBack.onDay === null ? '' : format.day(row.cameBack.onDay),
                        row.cameBack.reason,
                      )}
                    </span>
                  )}
                </span>,
                format.mass(row.grams),
                row.giftClosesOn === null ? words.noDay : format.day(row.giftClosesOn),
                nextOf(row),
              ],
            }))}
          />
        )}
      </Searched>
    </section>
  );
}

/** A container that no pantry takes goes to animals, the compost or the bin. */
function SendOn({ rows }: { rows: readonly Queued[] }) {
  const words = useGivingText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { chosen, to, reason },
    change,
    reset,
  } = useDraft('send-on', { chosen: '', to: 'animals' as 'animals' | 'composted' | 'discarded', reason: '' });
  const container = rows.find(({ id }) => id === chosen) ?? rows[0];
  const sending = useMutation({
    mutationFn: ({ id, json }: { id: string; json: { to: typeof to; reason: string } }) =>
      askOnce(`ladder.${id}`, json, (header) =>
        inside.containers[':container']['ladder-steps'].$post(
          { param: { storehouse, container: id }, json },
          { headers: header },
        ),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['giving'] });
    },
  });
  const problems = problemsOf(sending.error);
  if (!container) return null;
  return (
    <details>
      <summary>{words.sendOn}</summary>
      <Form label={words.sendOn} onSend={() => sending.mutate({ id: container.id, json: { to, reason } })}>
        <p>{words.sendWords}</p>
        <Choice
          label={words.container}
          value={container.id}
          options={rows.map((row) => ({
            value: row.id,
            name: `${spellCode(row.code)}, ${named(row, format.language)}`,
          }))}
          onChange={(chosen) => change({ chosen })}
        />
        <Choice
          label={words.where}
          value={to}
          options={Object.entries(words.sendTo).map(([value, name]) => ({ value, name }))}
          problem={problems.to}
          onChange={(value) => change({ to: value as typeof to })}
        />
        <Field
          label={words.reason}
          value={reason}
          problem={problems.reason}
          onChange={(event) => change({ reason: event.target.value })}
        />
        {problems.to || problems.reason ? null : <ProblemSaid error={sending.error} />}
        {sending.data ? <p role="status">{words.sent(format.mass(sending.data.grams))}</p> : null}
        <button type="submit" className="btn" disabled={sending.isPending}>
          {words.send}
        </button>
      </Form>
    </details>
  );
}
