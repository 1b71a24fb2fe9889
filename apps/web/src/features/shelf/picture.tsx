import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import type { Kind, Shelved } from './queries.ts';
import { planksOf, type Run } from './runs.ts';
import './shelf.css';
import { useShelfText } from './words.ts';

/** Picture 2: one's own containers on the planks of their places, by kind and to the scale of what each holds. */
export function ShelfPicture({
  containers,
  kinds,
}: {
  containers: readonly Shelved[];
  kinds: readonly Kind[];
}) {
  const words = useShelfText();
  const hasOpened = containers.some(({ openedOn, grams }) => openedOn !== null && grams > 0);
  return (
    <section>
      <h2>{words.atHome}</h2>
      {planksOf(containers, kinds).map(({ place, runs }) => (
        <section key={place?.id ?? ''}>
          <h3>{place?.name ?? words.noPlace}</h3>
          <div className="planks">
            {runs.map((run) => (
              <RunLink key={run.key} run={run} />
            ))}
          </div>
        </section>
      ))}
      {containers.some(({ keeping }) => keeping !== null) ? (
        <p className="soft mark">{words.shadeMeans}</p>
      ) : null}
      {hasOpened ? <p className="soft mark">{words.lidOff}</p> : null}
    </section>
  );
}

function RunLink({ run }: { run: Run }) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const [first] = run.containers;
  if (!first) return null;
  const food = nameIn(format.language, first.food);
  const kind = nameIn(format.language, first.kind);
  const columns = Math.ceil(run.containers.length / run.high);
  const rows = Math.min(run.high, run.containers.length);
  const [width, height] = [columns * (run.width + 1), rows * (run.height + 1)];
  return (
    <Link className="run" to="/s/$storehouse/shelf/$container" params={{ storehouse, container: first.id }}>
      <span className="on-plank">
        <svg
          width={width + 2}
          height={height + 2}
          viewBox={`-1 -1 ${width + 2} ${height + 2}`}
          aria-hidden="true"
        >
          {run.containers.map((container, at) => (
            <g
              key={container.id}
              transform={`translate(${Math.floor(at / rows) * (run.width + 1)} ${height - ((at % rows) + 1) * (run.height + 1)})`}
            >
              <OneContainer
                run={run}
                isOpened={container.openedOn !== null}
                likelyDays={container.keeping?.likelyDays ?? null}
              />
            </g>
          ))}
        </svg>
      </span>
      <span className="run-says">
        {run.containers.length === run.count
          ? words.runOf(food, run.count, kind)
          : words.runPart(food, run.containers.length, run.count, kind)}
      </span>
    </Link>
  );
}

type OneProps = { run: Run; isOpened: boolean; likelyDays: number | null };

function OneContainer(one: OneProps) {
  const { width, height } = one.run;
  const isSoon = one.likelyDays !== null && one.likelyDays < NOTCH_DAYS;
  return (
    <>
      <Outline {...one} />
      {isSoon ? (
        <path
          d={`M${width} ${height * 0.4}l${-width * 0.3} ${height * 0.15}l${width * 0.3} ${height * 0.15}z`}
        />
      ) : null}
    </>
  );
}

const NOTCH_DAYS = 365;
/** Parts of the cloth's colour by the days that are left, the longest first; ten years and more are all of it. */
const SHADES = [
  { days: 3652, part: 100 },
  { days: 1096, part: 70 },
  { days: NOTCH_DAYS, part: 40 },
] as const;
const shadeOf = (days: number | null): number =>
  days === null ? 100 : (SHADES.find((shade) => days >= shade.days)?.part ?? 10);

function Outline({ run: { shape, width, height }, isOpened, likelyDays }: OneProps) {
  const fill = `color-mix(in srgb, var(--cloth) ${shadeOf(likelyDays)}%, var(--raised))`;
  const drawn = { fill, stroke: 'var(--ink)', strokeWidth: 1 };
  const lid = Math.max(2, height * 0.07);
  if (shape === 'pail')
    return (
      <g {...drawn}>
        <path d={`M${width * 0.03} ${lid}H${width * 0.97}L${width * 0.88} ${height}H${width * 0.12}z`} />
        {isOpened ? null : <rect width={width} height={lid} rx="1" />}
      </g>
    );
  if (shape === 'jar' || shape === 'bottle') {
    const neck = shape === 'jar' ? 0.72 : 0.36;
    const shoulder = height * (shape === 'jar' ? 0.2 : 0.34);
    const [left, right] = [(width * (1 - neck)) / 2, (width * (1 + neck)) / 2];
    return (
      <g {...drawn}>
        <path
          d={`M${left} ${lid}H${right}V${shoulder * 0.55}L${width} ${shoulder}V${height}H0V${shoulder}L${left} ${shoulder * 0.55}z`}
        />
        {isOpened ? null : <rect x={left - 1} width={right - left + 2} height={lid} fill="var(--raised)" />}
      </g>
    );
  }
  return (
    <g {...drawn}>
      <rect y={lid / 2} width={width} height={height - lid / 2} rx="1.5" />
      {isOpened ? null : <path d={`M0 ${lid * 1.4}H${width}`} />}
    </g>
  );
}
