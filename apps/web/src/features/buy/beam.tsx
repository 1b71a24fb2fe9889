import { Slider, SliderThumb, SliderTrack } from 'react-aria-components';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { beamMarksOf, besideEachOther } from './beam-marks.ts';

export type Three = readonly [least: number, wanted: number, most: number];

type BeamProps = {
  value: Three;
  step: number;
  bag: number;
  max: number;
  unit: string;
  onChange: (value: Three) => void;
};

/** Least, wanted and most on the beam of a scale; the arrow keys move each by one step. */
export function Beam({ value, step, bag, max, unit, onChange }: BeamProps) {
  const t = useText();
  const names = [t.least, t.wanted, t.most];
  return (
    <Slider
      className="beam"
      aria-label={t.yourPledge}
      minValue={0}
      maxValue={max}
      step={step}
      value={[...value]}
      onChange={([least = 0, wanted = 0, most = 0]: number[]) => onChange([least, wanted, most])}
    >
      <SliderTrack className="beam-track">
        {({ state }) => (
          <>
            <Readings
              names={names}
              values={value}
              places={[state.getThumbPercent(0), state.getThumbPercent(1), state.getThumbPercent(2)]}
            />
            <span
              className="beam-between"
              style={{
                left: `${state.getThumbPercent(0) * 100}%`,
                width: `${(state.getThumbPercent(2) - state.getThumbPercent(0)) * 100}%`,
              }}
            />
            {names.map((name, at) => (
              <SliderThumb
                key={name}
                index={at}
                aria-label={`${name}, ${unit}`}
                className={at === 1 ? 'beam-thumb poise' : 'beam-thumb'}
              >
                {at === 1 ? <Poise /> : null}
              </SliderThumb>
            ))}
            <Marks step={step} bag={bag} max={max} />
          </>
        )}
      </SliderTrack>
    </Slider>
  );
}

/** The weight that slides on the beam. */
const Poise = () => (
  <svg viewBox="0 0 36 36" width="36" height="36" aria-hidden="true">
    <path
      d="M13 1h10v6h7l5 24a3 3 0 0 1-3 4H4a3 3 0 0 1-3-4l5-24h7z"
      fill="var(--raised)"
      stroke="var(--ink)"
      strokeWidth="2"
    />
    <path d="M18 19v8" stroke="var(--ink)" strokeWidth="2" strokeLinecap="round" />
  </svg>
);

/** What each of the three stands at, above it. Where two stand too near, their words step aside. */
function Readings({ names, values, places }: { names: string[]; values: Three; places: Three }) {
  const { format } = useHouse();
  return (
    <div className="beam-readings" aria-hidden="true">
      {besideEachOther(places).map((place, at) => (
        <span key={names[at]} style={{ left: `${place * 100}%` }}>
          {names[at]}
          <b>{format.count(values[at] ?? 0)}</b>
        </span>
      ))}
    </div>
  );
}

/** The notches of the beam: a long one with its figure at each bag, short ones at the steps between. */
function Marks({ step, bag, max }: { step: number; bag: number; max: number }) {
  const { format } = useHouse();
  return (
    <svg className="beam-marks" aria-hidden="true">
      {beamMarksOf({ step, bag, max }).map(({ at, isBag, isNamed }) => {
        const x = `${(at / max) * 100}%`;
        return (
          <g key={at}>
            <line
              x1={x}
              x2={x}
              y1="0"
              y2={isBag ? 14 : 8}
              stroke="var(--ink)"
              strokeWidth={isBag ? 1.5 : 1}
            />
            {isNamed ? (
              <text x={x} y="30" textAnchor="middle" className="s">
                {format.count(at)}
              </text>
            ) : null}
          </g>
        );
      })}
    </svg>
  );
}
