import { formatDecimal, fraction } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { buyQuery, buysQuery } from '../../api/queries.ts';
import { Answer } from '../../ui/glance.tsx';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { foodNameOf } from '../buy/food-name.ts';
import { splitsQuery } from '../split/queries.ts';
import type { Share, Split } from '../split/split-body.ts';
import { useSplitText } from '../split/words.ts';
import { useAskedText } from './words.ts';

/** Question 8, of the buy that landed last: one's own claim and award, the rule, and how far apart all ended up, without a name. */
export function OwnShare() {
  const words = useAskedText();
  const { storehouse } = useHouse();
  const { data } = useQuery(buysQuery({ storehouse }));
  if (!data) return null;
  const last = data.buys
    .filter(({ stage, landingOn }) => LANDED.includes(stage) && landingOn !== null)
    .toSorted((a, b) => (b.landingOn ?? '').localeCompare(a.landingOn ?? ''))[0];
  return <Answer ask={words.share}>{last ? <ShareOf buy={last.id} /> : words.noShare}</Answer>;
}

const LANDED = ['landed', 'shared-out', 'closed'];

function ShareOf({ buy }: { buy: string }) {
  const words = useAskedText();
  const { storehouse, household } = useOwnHousehold();
  const param = { storehouse, buy };
  return (
    <Loaded reading={joined(useQuery(buyQuery(param)), useQuery(splitsQuery(param)))}>
      {([page, { splits }]) => {
        const got = splits
          .filter(({ undoneAt }) => undoneAt === null)
          .flatMap((split) => {
            const share = split.shares.find(({ ownerId }) => ownerId === household);
            const line = page.lines.find(({ id }) => id === split.lineId);
            return share && line ? [{ split, share, line }] : [];
          })
          .toSorted(
            (a, b) =>
              page.lines.indexOf(a.line) - page.lines.indexOf(b.line) || a.split.roundNo - b.split.roundNo,
          );
        if (got.length === 0) return words.noShare;
        return got.map(({ split, share, line }) => (
          <span key={split.id} className="block">
            <Got split={split} share={share} line={line} />
          </span>
        ));
      }}
    </Loaded>
  );
}

type GotProps = { split: Split; share: Share; line: Parameters<typeof foodNameOf>[0] };

function Got({ split, share, line }: GotProps) {
  const words = useAskedText();
  const rules = useSplitText();
  const { storehouse, format } = useHouse();
  const percent = (hundredths: number) => formatDecimal(fraction(hundredths, 100), 2, format.language);
  const { ratioRange, rule, buyId, lineId } = split;
  return (
    <>
      <Link to="/s/$storehouse/buys/$buy/split/$line" params={{ storehouse, buy: buyId, line: lineId }}>
        {words.got({
          food: foodNameOf(line, format.language),
          ...{ award: format.mass(share.awardGrams), claim: format.mass(share.claimGrams) },
          rule: rules.byRule[rule] ?? rule,
        })}
      </Link>{' '}
      {ratioRange === null
        ? null
        : words.allGot(
            percent(ratioRange.leastHundredthsOfPercent),
            percent(ratioRange.mostHundredthsOfPercent),
          )}
    </>
  );
}
