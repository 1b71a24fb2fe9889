import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { simulationQuery } from './queries.ts';
import type { Simulated } from './split-body.ts';
import './split.css';
import { useSplitText } from './words.ts';

/** The last splits as each of the six rules would have made them. It tells, and posts nothing. */
export function Simulation() {
  const t = useSplitText();
  const { storehouse } = useHouse();
  const simulation = useQuery(simulationQuery({ storehouse }));
  useTitle(t.simulation);
  return (
    <>
      <h1>{t.simulation}</h1>
      <p>{t.simulationWords}</p>
      <Loaded reading={simulation}>
        {({ splits }) =>
          splits.length === 0 ? (
            <p>{t.noSplits}</p>
          ) : (
            splits.map((split) => <OneSplit key={split.id} split={split} />)
          )
        }
      </Loaded>
    </>
  );
}

function OneSplit({ split }: { split: Simulated }) {
  const t = useSplitText();
  const { format } = useHouse();
  const food = format.language === 'es' ? split.foodNameEs : split.foodNameEn;
  const title = t.simulated(food, split.buyName, format.instant(split.madeAt));
  const rows = split.rules.find(({ isKnown }) => isKnown)?.shares ?? [];
  const isWhole = split.rules.every(({ isKnown }) => isKnown);
  return (
    <section className="stack">
      <h2>{title}</h2>
      <p className="soft">
        {t.simulatedWas(t.byRule[split.rule] ?? split.rule, format.count(split.landedGrams))}
      </p>
      {rows.length === 0 ? <p>{t.noPartInIt}</p> : <SimulatedTable split={split} title={title} />}
      {rows.length === 0 || isWhole ? null : <p className="soft">{t.needNotRead}</p>}
    </section>
  );
}

function SimulatedTable({ split, title }: { split: Simulated; title: string }) {
  const t = useSplitText();
  const { format } = useHouse();
  const owners = new Map(
    split.rules.flatMap(({ shares }) => shares).map((share) => [share.ownerId, share] as const),
  );
  const rows = [...owners.values()].toSorted((a, b) => a.seat - b.seat);
  const cellOf = (rule: string) => (rule === split.rule ? 'num pick' : 'num');
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard (axe: scrollable-region-focusable)
    <section className="scroll rules" tabIndex={0} aria-label={title}>
      <table>
        <caption className="sr">{title}</caption>
        <thead>
          <tr>
            <th scope="col">{t.household}</th>
            <th scope="col" className="num">
              {t.claimGrams}
            </th>
            {split.rules.map(({ rule }) => (
              <th key={rule} scope="col" className={rule === split.rule ? 'r pick' : 'r'}>
                <b>{t.rules[rule] ?? rule}</b>
                {rule === split.rule ? <span className="ours">{t.itWas}</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ ownerId, name, isCommonStock, claimGrams }) => (
            <tr key={ownerId}>
              <th scope="row">{isCommonStock ? t.commonStock : name}</th>
              <td className="num">{format.count(claimGrams)}</td>
              {split.rules.map(({ rule, isKnown, shares }) => {
                const share = shares.find((candidate) => candidate.ownerId === ownerId);
                return (
                  <td key={rule} className={cellOf(rule)}>
                    {isKnown ? format.count(share?.awardGrams ?? 0) : t.notKnown}
                  </td>
                );
              })}
            </tr>
          ))}
          {rows.length > 1 ? (
            <tr className="sum">
              <th scope="row">{t.whole}</th>
              <td className="num">{format.count(sumOf(rows.map(({ claimGrams }) => claimGrams)))}</td>
              {split.rules.map(({ rule, isKnown, shares }) => (
                <td key={rule} className={cellOf(rule)}>
                  {isKnown ? format.count(sumOf(shares.map(({ awardGrams }) => awardGrams))) : t.notKnown}
                </td>
              ))}
            </tr>
          ) : null}
        </tbody>
      </table>
    </section>
  );
}
