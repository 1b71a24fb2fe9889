import { adviseLift } from '@sheafbook/packing';
import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useText } from '../../text/taste.ts';
import { Answer } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { useNamed } from '../../ui/use-named.ts';
import { ScaleAnswer } from '../scale/scales-of-day.tsx';
import { useCleanDownLeft } from './clean-down.tsx';
import { useGlanceText } from './glance-words.ts';
import { blankLabelsQuery, type LogBody, type OfSession, type PlanBody } from './queries.ts';

/** Questions 14, 18 and 19: who closes cans, whether the scale is checked, and which labels wait. */
export function Ready({ plan, param }: { plan: PlanBody; param: OfSession }) {
  const t = useGlanceText();
  const { data: labels } = useQuery(blankLabelsQuery(param));
  const { hands } = plan.crew;
  const trained = hands.filter(({ maySeam, state }) => maySeam && state !== 'stayed-away');
  return (
    <>
      <Answer ask={t.trained}>
        {trained.length === 0 ? (
          <State kind="watch" word={t.nobodyTrained} />
        ) : (
          trained.map(({ name }) => name).join(', ')
        )}
      </Answer>
      <ScaleAnswer scales={plan.scales} />
      {labels ? (
        <Answer ask={t.labels}>
          <Link to="/s/$storehouse/packing/$session/labels" params={param}>
            {t.labelsWait(labels.labels.length, labels.spent.length)}
          </Link>
        </Answer>
      ) : null}
    </>
  );
}

/** Question 21. */
export function NotHere({ plan }: { plan: PlanBody }) {
  const t = useGlanceText();
  const away = plan.slots.filter(({ isHere }) => !isHere);
  if (plan.slots.length === 0) return null;
  return (
    <Answer ask={t.notHere}>
      {away.length === 0 ? (
        <State kind="well" word={t.allHere} />
      ) : (
        [...new Set(away.map(({ household }) => household))].join(', ')
      )}
    </Answer>
  );
}

/** Questions 11, 12, 13, 22, 23 and 24, of what was poured so far and what stands by to be poured. */
export function OnTheLine({ body, plan }: { body: LogBody; plan: PlanBody }) {
  const t = useGlanceText();
  const { allergens, gluten } = useText();
  const { format } = useHouse();
  const nameOf = useNamed();
  const standing = body.pours.filter(({ isUndone }) => !isUndone);
  const last = standing.toSorted((a, b) => Date.parse(a.pouredAt) - Date.parse(b.pouredAt)).at(-1);
  const names: Readonly<Record<string, string>> = { ...allergens, gluten };
  const heaviest = body.bags.toSorted((a, b) => b.broughtGrams - a.broughtGrams)[0];
  const unmeasured = body.bags.filter(({ moistureTenthsPercent }) => moistureTenthsPercent === null);
  return (
    <>
      {last ? (
        <>
          <Answer ask={t.onLine}>{t.foodOf(nameOf(last.food), last.household)}</Answer>
          <Answer ask={t.lastAllergens}>
            {last.carries.length === 0 ? t.none : last.carries.map((one) => names[one] ?? one).join(', ')}
          </Answer>
        </>
      ) : null}
      <Answer ask={t.left}>{leftOf(plan, standing).map(t.cansLeft).join('; ') || t.none}</Answer>
      <Answer ask={t.unmeasured}>
        {unmeasured.length === 0
          ? t.none
          : [...new Set(unmeasured.map(({ food }) => nameOf(food)))].join(', ')}
      </Answer>
      {heaviest ? (
        <Answer ask={t.heaviest}>
          {t.bagOf(heaviest.bagNo, format.mass(heaviest.broughtGrams))}{' '}
          {t.lifted[adviseLift(heaviest.broughtGrams)]}
        </Answer>
      ) : null}
      <Scrap body={body} />
    </>
  );
}

/** Question 22. */
export function Scrap({ body }: { body: LogBody }) {
  const t = useGlanceText();
  const { format } = useHouse();
  const { spilledGrams, sampledGrams } = body.mass;
  const undone = body.pours.filter(({ isUndone }) => isUndone).length;
  return (
    <Answer ask={t.scrap}>{t.scrapBy(format.count(spilledGrams), format.count(sampledGrams), undone)}</Answer>
  );
}

/** Question 16, by the ticks on this phone. */
export function CleanDownAnswer({ session }: OfSession) {
  const t = useGlanceText();
  const left = useCleanDownLeft(session);
  return (
    <Answer ask={t.cleanDown}>
      {left.length === 0 ? <State kind="well" word={t.none} /> : left.join('; ')}
    </Answer>
  );
}

/** Containers that each household asked for and that were not filled yet. */
function leftOf({ lines }: PlanBody, standing: LogBody['pours']) {
  const runs = lines.flatMap((line) => line.runs);
  return [...new Set(runs.map(({ household }) => household))].flatMap((household) => {
    const asked = sumOf(runs.filter((run) => run.household === household).map((run) => run.containers));
    const filled = standing.filter((pour) => pour.household === household).length;
    return asked > filled ? [{ household, count: asked - filled }] : [];
  });
}
