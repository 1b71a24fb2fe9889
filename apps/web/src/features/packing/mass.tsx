import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { askOnce } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Figures, Ledger, NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useOnline } from '../../ui/use-online.ts';
import { MoistureFields } from '../moisture/moisture-fields.tsx';
import { readingsTyped } from '../moisture/moisture-typed.ts';
import { useMoistureText } from '../moisture/words.ts';
import { gramsOnScale } from '../shelf/mass-typed.ts';
import { GrossSaid } from '../tare/gross.tsx';
import { Losses, LossesSoFar } from './losses.tsx';
import { MassState } from './mass-state.tsx';
import { type LogBody, type LoggedBag, ofSession, sessionApi } from './queries.ts';
import { useBags } from './use-bags.ts';
import type { Log } from './use-log.ts';
import { keyOfBag } from './waiting-bags.ts';
import { usePackingText } from './words.ts';

/** The mass of the day: in = containers + left + spilled + sampled, until nothing is missing and somebody signs. */
export function Mass({ log, body, here }: { log: Log; body: LogBody; here: readonly LoggedBag[] }) {
  const t = usePackingText();
  const { format } = useHouse();
  const moist = useMoistureText();
  const isOnline = useOnline();
  const { mass, bags } = body;
  if (here.length === 0) return null;
  const grams = (value: number) => format.count(value);
  // Not for the moment that a sending takes: no key moves from under a thumb.
  const isKept = log.waiting.length > 0 && (!isOnline || log.waiting.some(({ refusal }) => refusal !== null));
  const isRunning = body.stage === 'running';
  return (
    <section className="stack">
      <h2>{t.mass}</h2>
      {isKept ? <p className="soft">{t.notInSums}</p> : null}
      <p role="status">
        <MassState body={body} />
      </p>
      <div className="share" aria-hidden="true">
        <span style={{ width: `${(100 * mass.inContainersGrams) / Math.max(mass.broughtGrams, 1)}%` }} />
      </div>
      <Figures
        rows={[
          { name: t.brought, value: grams(mass.broughtGrams), unit: 'g' },
          { name: t.inContainers, value: grams(mass.inContainersGrams), unit: 'g' },
          { name: t.leftInBags, value: grams(mass.leftInBagsGrams), unit: 'g' },
          { name: t.spilled, value: grams(mass.spilledGrams), unit: 'g' },
          { name: t.sampled, value: grams(mass.sampledGrams), unit: 'g' },
          ...(mass.moistureGrams === 0
            ? []
            : [
                {
                  name: mass.moistureGrams > 0 ? moist.dried : moist.damper,
                  value: grams(Math.abs(mass.moistureGrams)),
                  unit: 'g',
                },
              ]),
        ]}
      />
      {isRunning ? <Losses log={log} bags={here} /> : null}
      <LossesSoFar body={body} />
      <Ledger
        caption={t.bags}
        columns={[
          { name: t.whose },
          { name: t.brought, isNumber: true },
          { name: t.leftInBags, isNumber: true },
          { name: t.difference, isNumber: true },
        ]}
        rows={bags.map((bag) => ({
          key: `${bag.bagId} ${bag.householdId}`,
          cells: [
            t.bagOf(nameIn(format.language, bag.food), bag.household, bag.bagNo),
            grams(bag.broughtGrams),
            bag.isWeighed ? (
              grams(bag.leftInBagsGrams)
            ) : (
              <>
                {grams(bag.expectedLeftGrams)} <span className="soft block">{t.notWeighed}</span>
              </>
            ),
            bag.isWeighed ? grams(bag.unaccountedGrams) : '',
          ],
        }))}
      />
      <Containers body={body} />
      {isRunning ? <Weigh log={log} bags={here} /> : null}
      {isRunning && mass.isWeighed && body.unchecked.length > 0 ? (
        <LastCheck log={log} unchecked={body.unchecked} />
      ) : isRunning ? (
        <Sign log={log} body={body} />
      ) : null}
    </section>
  );
}

/** Every container that was closed, by line and serial. */
function Containers({ body }: { body: LogBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const standing = body.pours.filter(({ isUndone }) => !isUndone);
  if (standing.length === 0) return null;
  return (
    <details>
      <summary>{t.allContainers}</summary>
      <Ledger
        caption={t.allContainers}
        columns={[
          { name: t.code },
          { name: t.serials, isNumber: true },
          { name: t.what },
          { name: t.grams, isNumber: true },
        ]}
        rows={standing.map((pour) => ({
          key: pour.containerId,
          cells: [
            `${pour.code.slice(0, 3)} ${pour.code.slice(3)}`,
            format.count(pour.serial),
            <>
              {`${nameIn(format.language, pour.food)}, ${pour.household}`}
              <GrossSaid pour={pour} />
            </>,
            format.count(pour.grams),
          ],
        }))}
      />
    </details>
  );
}

/** What was weighed back of a bag at the end. */
function Weigh({ log, bags }: { log: Log; bags: readonly LoggedBag[] }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { bag, options, typed, because, moisture, change, reset } = useBags(
    `left.${log.param.session}`,
    bags,
  );
  const leftGrams = /^\s*0+\s*$/.test(typed) ? 0 : gramsOnScale(typed, bag.broughtGrams);
  const readings = readingsTyped(moisture);
  const keep = () => {
    if (leftGrams === undefined || readings === undefined) return;
    const { bagId, householdId, food, household, bagNo } = bag;
    const json = { bagId, householdId, leftGrams, because, moisture: readings };
    log.write({ kind: 'left', json, bag: { food, household, bagNo } });
    reset();
  };
  return (
    <details>
      <summary>{t.weighLeft}</summary>
      <div className="stack">
        <Choice
          label={t.whose}
          value={keyOfBag(bag)}
          options={options}
          onChange={(chosen) => change({ chosen, was: null, is: '' })}
        />
        <div className="pair">
          <Field
            label={t.leftNow}
            hint={t.expected(format.count(bag.expectedLeftGrams))}
            inputMode="decimal"
            value={typed}
            onChange={(event) => change({ typed: event.target.value })}
            problem={typed !== '' && leftGrams === undefined ? t.massProblem : undefined}
          />
          <Field
            label={t.because}
            value={because}
            onChange={(event) => change({ because: event.target.value })}
          />
        </div>
        <MoistureFields
          draft={moisture}
          onChange={change}
          weighing={
            leftGrams === undefined
              ? null
              : { bookedGrams: Math.max(bag.expectedLeftGrams, 0), weighedGrams: leftGrams }
          }
        />
        <button
          type="button"
          className="btn"
          disabled={leftGrams === undefined || readings === undefined}
          onClick={keep}
        >
          {t.keepWeight}
        </button>
      </div>
    </details>
  );
}

/** Everything is weighed, and a seal still waits for the check that stands behind it. */
function LastCheck({ log, unchecked }: { log: Log; unchecked: LogBody['unchecked'] }) {
  const t = usePackingText();
  const { format } = useHouse();
  return (
    <NextStep title={t.checkFirst}>
      {unchecked.map(({ line, machines, fromSerial, toSerial }) => (
        <p key={`${line} ${fromSerial}`}>
          {t.uncheckedSays(
            machines.join(', '),
            format.count(line),
            format.count(fromSerial),
            format.count(toSerial),
          )}
        </p>
      ))}
      <div className="actions">
        <Link className="btn go" to="/s/$storehouse/packing/$session/seals" params={log.param}>
          {t.toSeals}
        </Link>
      </div>
    </NextStep>
  );
}

function Sign({ log, body }: { log: Log; body: LogBody }) {
  const t = usePackingText();
  const queries = useQueryClient();
  const { param } = log;
  const signing = useMutation({
    mutationFn: () =>
      askOnce(`sign.${body.sessionId}`, {}, (headers) => sessionApi.signing.$post({ param }, { headers })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
  });
  const isOnline = useOnline();
  const isLost = signing.error instanceof ApiProblem && signing.error.code === 'offline';
  return (
    <NextStep title={t.sign}>
      <p>{t.signSays}</p>
      {isLost ? null : <ProblemSaid error={signing.error} />}
      <div className="actions">
        <button
          type="button"
          className="btn go"
          disabled={signing.isPending || log.waiting.length > 0}
          onClick={() => signing.mutate()}
        >
          {t.signIt}
        </button>
      </div>
      {log.waiting.length > 0 ? <p className="said watch-said">{t.signWaits}</p> : null}
      {isOnline && !isLost ? null : (
        <p className="said watch-said" role="status">
          {t.signNeedsSignal}
        </p>
      )}
    </NextStep>
  );
}
