import { Slider, SliderThumb, SliderTrack } from 'react-aria-components';
import { useText } from '../../text/taste.ts';

export type Three = readonly [least: number, wanted: number, most: number];

/** Least, wanted and most on one beam; the arrow keys move each by one step. */
export function Beam({
  value,
  step,
  max,
  unit,
  onChange,
}: {
  value: Three;
  step: number;
  max: number;
  unit: string;
  onChange: (value: Three) => void;
}) {
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
              />
            ))}
          </>
        )}
      </SliderTrack>
      <div className="beam-ends" aria-hidden="true">
        <span>0</span>
        <span>
          {max} {unit}
        </span>
      </div>
    </Slider>
  );
}
