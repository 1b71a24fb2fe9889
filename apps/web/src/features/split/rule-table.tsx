import { useHouse } from '../../ui/house.ts';
import type { Comparison, Rule, RuleRun } from './split-body.ts';
import { useSplitText } from './words.ts';

type RuleTableProps = {
  comparison: Comparison;
  chosen: Rule;
  /** Left out when the rule stands already. */
  onChoose: ((rule: Rule) => void) | undefined;
};

/** Rows are households, columns are rules: grams bold, cents soft, and what is given of what is claimed as a bar. */
export function RuleTable({ comparison, chosen, onChoose }: RuleTableProps) {
  const t = useSplitText();
  const { format } = useHouse();
  const { rules, defaultRule } = comparison;
  const rows = rules[0]?.shares ?? [];
  const most = Math.max(1, ...rows.map(({ claimGrams }) => claimGrams));
  const nameOf = (name: string) => (name === '' ? t.commonStock : name);
  const sum = (numbers: readonly number[]) => numbers.reduce((total, number) => total + number, 0);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard (axe: scrollable-region-focusable)
    <section className="scroll rules" tabIndex={0} aria-label={t.sixRules}>
      <table>
        <caption className="sr">{t.sixRules}</caption>
        <thead>
          <tr>
            <th scope="col">{t.household}</th>
            <th scope="col" className="num">
              {t.claimGrams}
            </th>
            {rules.map((run) => (
              <th key={run.rule} scope="col" className={run.rule === chosen ? 'r pick' : 'r'}>
                <RuleHead run={run} isChosen={run.rule === chosen} onChoose={onChoose} />
                <span className="soft">{t.ruleWords[run.rule]}</span>
                {run.rule === defaultRule ? <span className="ours">{t.groupsRule}</span> : null}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.ownerId}>
              <th scope="row">{nameOf(row.name)}</th>
              <td className="num">{format.count(row.claimGrams)}</td>
              {rules.map((run) => {
                const share = run.shares.find(({ ownerId }) => ownerId === row.ownerId);
                return (
                  <td key={run.rule} className={run.rule === chosen ? 'cell pick' : 'cell'}>
                    <span className="gc">
                      <b>{format.count(share?.awardGrams ?? 0)}</b>
                      <span>{format.money(share?.goodsMinorUnits ?? 0)}</span>
                    </span>
                    <ShareBar claim={row.claimGrams / most} award={(share?.awardGrams ?? 0) / most} />
                  </td>
                );
              })}
            </tr>
          ))}
          {rows.length > 1 ? (
            <tr className="sum">
              <th scope="row">{t.whole}</th>
              <td className="num">{format.count(sum(rows.map(({ claimGrams }) => claimGrams)))}</td>
              {rules.map((run) => (
                <td key={run.rule} className={run.rule === chosen ? 'cell pick' : 'cell'}>
                  <span className="gc">
                    <b>{format.count(sum(run.shares.map(({ awardGrams }) => awardGrams)))}</b>
                    <span>{format.money(sum(run.shares.map(({ goodsMinorUnits }) => goodsMinorUnits)))}</span>
                  </span>
                </td>
              ))}
            </tr>
          ) : null}
        </tbody>
      </table>
    </section>
  );
}

/** Its rules are one choice of six: the arrows of a keyboard go from one to the next. */
function RuleHead({
  run,
  isChosen,
  onChoose,
}: {
  run: RuleRun;
  isChosen: boolean;
  onChoose: ((rule: Rule) => void) | undefined;
}) {
  const t = useSplitText();
  const name = t.rules[run.rule] ?? run.rule;
  if (!onChoose) return <b>{name}</b>;
  return (
    <label>
      <input
        type="radio"
        name="rule"
        value={run.rule}
        checked={isChosen}
        onChange={() => onChoose(run.rule)}
      />
      <b>{name}</b>
    </label>
  );
}

function ShareBar({ claim, award }: { claim: number; award: number }) {
  const width = 96;
  return (
    <svg viewBox={`0 0 ${width} 5`} width={width} height="5" aria-hidden="true">
      <rect
        x="0.5"
        y="0.5"
        width={Math.max(0, claim * width - 1)}
        height="4"
        fill="none"
        stroke="var(--edge)"
      />
      <rect className="given" width={award * width} height="5" />
    </svg>
  );
}
