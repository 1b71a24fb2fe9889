import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import type { BuyPage } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { pledgeEffectQuery } from './run-queries.ts';
import { usePledgeText } from './words.ts';

/** What the household's pledges did for its neighbours, once the buy is fixed. */
export function PledgeEffect({ buy }: { buy: BuyPage }) {
  const words = usePledgeText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(pledgeEffectQuery({ storehouse, buy: buy.id }));
  return (
    <Loaded reading={reading}>
      {({ effect }) => {
        if (effect === null) return null;
        const { savedMinorUnits: saved, freightSavedMinorUnits: freight } = effect;
        const said = saved > 0 ? words.effectSaved : saved < 0 ? words.effectDearer : () => words.effectNone;
        return (
          <section className="stack">
            <h2>{words.effect}</h2>
            <p>
              {said(format.money(Math.abs(saved)))}
              {freight > 0 ? ` ${words.effectFreight(format.money(freight))}` : ''}
            </p>
            <ul>
              {effect.lines.map(({ lineId, isBoughtOnlyWithIt, landedWithIt, landedWithout }) => {
                const line = buy.lines.find(({ id }) => id === lineId);
                if (!line) return null;
                const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
                const food = foodNameOf(line, format.language);
                if (isBoughtOnlyWithIt) return <li key={lineId}>{words.effectOnly(food)}</li>;
                if (!landedWithIt || !landedWithout) return null;
                const [from, to] = [landedWithout, landedWithIt].map((price) => format.perUnit(price, unit));
                return from === to ? null : (
                  <li key={lineId}>{words.effectLine(food, from ?? '', to ?? '', unit)}</li>
                );
              })}
            </ul>
            <p className="soft">{words.effectHow}</p>
          </section>
        );
      }}
    </Loaded>
  );
}
