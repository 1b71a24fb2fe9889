import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import type { Kind, Shelved } from './queries.ts';
import { type Run, runsOf } from './runs.ts';
import './shelf.css';
import { useShelfText } from './words.ts';

/** Picture 2: one's own containers on planks, by kind and to the scale of what each holds. */
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
      <div className="planks">
        {runsOf(containers, kinds).map((run) => (
          <RunLink key={run.key} run={run} />
        ))}
      </div>
      {hasOpened ? <p className="soft mark">{words.lidOff}</p> : null}
    </section>
  );
}

function RunLink({ run }: { run: Run }) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const [first] = run.containers;
  if (!first) return null;
  const isSpanish = format.language === 'es';
  const food = isSpanish ? first.food.nameEs : first.food.nameEn;
  const kind = isSpanish ? first.kind.nameEs : first.kind.nameEn;
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
              <OneContainer run={run} isOpened={container.openedOn !== null} />
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

/** Cloth alike for all: how long each keeps is told on its own page. */
function OneContainer({ run: { shape, width, height }, isOpened }: { run: Run; isOpened: boolean }) {
  const drawn = { fill: 'var(--cloth)', stroke: 'var(--ink)', strokeWidth: 1 };
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
