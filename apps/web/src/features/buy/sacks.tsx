import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import { type LineFacts, sacksOf } from './line-facts.ts';
import { usePledgeText } from './words.ts';

const MOST_SACKS = 60;
const ROW = 42;
const STEP = 45;

const SACK =
  'M8.200 2.700Q25 -2.400 41.800 2.700l4.400-2.900Q44.500 19 46.200 38l-4.400-2.900Q25 40.400 8.200 35.300l-4.400 2.900Q5.500 19 3.800 0Z';

type Price = { readonly minorUnits: number; readonly grams: number };
type SacksProps = { facts: LineFacts; title: string; landed: Price | null };

/** Sacks rising toward the next price: full, the one that still lacks some, within neighbours' most, nobody's yet. */
export function Sacks({ facts, title, landed }: SacksProps) {
  const t = useText();
  const words = usePledgeText();
  const { format } = useHouse();
  const { full, partUnits, lackUnits } = sacksOf(facts.standingUnits, facts.bagUnits);
  const next = facts.jumps.find(({ fromBags }) => fromBags > full);
  const within = facts.mostUnits === null ? full : Math.floor(facts.mostUnits / facts.bagUnits);
  const least = Math.max(full + (partUnits > 0 ? 1 : 0), next?.fromBags ?? 0, 5);
  const drawn = Math.min(MOST_SACKS, Math.ceil(Math.max(least, Math.min(within, least + 5)) / 5) * 5);
  const rows = drawn / 5;
  const height = rows * ROW + 16;
  const placeOf = (at: number) => ({ x: (at % 5) * STEP, y: height - 8 - ROW * (Math.floor(at / 5) + 1) });
  const jumps = facts.jumps.filter(({ fromBags }) => fromBags <= drawn);
  const bag = format.massIn(0, facts.unit).split(' ').at(-1) ?? '';
  return (
    <figure className="stack">
      <svg viewBox={`0 -4 350 ${height + 4}`} role="img" aria-label={title}>
        {Array.from({ length: drawn }, (_, at) => at).map((at) => {
          const { x, y } = placeOf(at);
          const share = at < full ? 1 : at === full ? partUnits / facts.bagUnits : 0;
          return <Sack key={at} x={x} y={y} share={share} isWithin={at < within} />;
        })}
        <path d={`M0 ${height - 5}H233`} stroke="var(--plank)" strokeWidth="5" />
        {jumps.map((jump) => (
          <Jump
            key={jump.fromBags}
            y={height - 8 - ROW * Math.ceil(jump.fromBags / 5) - 2}
            isNext={jump === next}
            isPassed={jump.fromBags <= full}
            title={jump.isFreeFreight ? words.freightFree : jump === next ? t.nextPrice : t.furtherPrice}
            words={
              jump.fromBags <= full
                ? words.jumpPassed(jump.fromBags)
                : words.jumpAt(jump.fromBags, format.perUnit(jump.landed, facts.unit), facts.unit)
            }
          />
        ))}
        {landed ? (
          <text x="350" y={height - 10} textAnchor="end" className="s halo">
            {words.nowAt(format.perUnit(landed, facts.unit), facts.unit)}
          </text>
        ) : null}
        {partUnits > 0 && full < drawn ? (
          <Tag {...placeOf(full)} words={t.toGo(`${format.count(lackUnits)} ${bag}`)} isLeft={full % 5 > 2} />
        ) : null}
      </svg>
      {within > full ? <figcaption className="soft mark">{words.outlined}</figcaption> : null}
      <AsTable>
        <Ledger
          caption={title}
          columns={[{ name: t.sacks }, { name: t.number, isNumber: true }]}
          rows={[
            { key: 'full', cells: [t.fullSacks, format.count(full)] },
            { key: 'lack', cells: [t.nextSackLacks, `${format.count(lackUnits)} ${bag}`] },
            ...facts.jumps.map((jump) => ({
              key: `jump ${jump.fromBags}`,
              cells: [
                `${jump.isFreeFreight ? words.freightFree : t.nextPrice}: ${words.jumpAt(jump.fromBags, format.perUnit(jump.landed, facts.unit), facts.unit)}`,
                t.sacksAway(Math.max(0, jump.fromBags - full)),
              ],
            })),
          ]}
        />
      </AsTable>
    </figure>
  );
}

type SackProps = { x: number; y: number; share: number; isWithin: boolean };

function Sack({ x, y, share, isWithin }: SackProps) {
  const isFull = share === 1;
  const filled = 42.4 * share;
  return (
    <g transform={`translate(${x} ${y + 2})`}>
      {share > 0 ? (
        <>
          <clipPath id={`sack-${x}-${y}`}>
            <rect x="3.8" y="-4" width={filled} height="46" />
          </clipPath>
          <g clipPath={`url(#sack-${x}-${y})`}>
            <path d={SACK} fill="var(--cloth)" />
            <path d="M16.600 1v36M20.100 1v36" stroke="var(--stripe)" strokeWidth="1.5" opacity=".8" />
            <path d="M39.700 6.100v26.600" stroke="var(--cloth-edge)" strokeDasharray="2 2" />
          </g>
        </>
      ) : null}
      <path
        d={SACK}
        fill="none"
        stroke={isFull ? 'var(--cloth-edge)' : share > 0 ? 'var(--ink)' : 'var(--edge)'}
        strokeWidth={share > 0 && !isFull ? 1.5 : 1}
        strokeDasharray={share === 0 && !isWithin ? '2 3' : undefined}
      />
    </g>
  );
}

type JumpProps = { y: number; isNext: boolean; isPassed: boolean; title: string; words: string };

function Jump({ y, isNext, isPassed, title, words }: JumpProps) {
  return (
    <g>
      <path
        d={`M0 ${y}H350`}
        stroke="var(--ink)"
        strokeWidth={isNext ? 1.5 : 1}
        strokeDasharray={isNext ? undefined : '1 3'}
      />
      {isPassed ? null : (
        <text x="350" y={y + 17} textAnchor="end" className={isNext ? 't16 b' : 's'}>
          {title}
        </text>
      )}
      <text x="350" y={y + (isPassed ? 17 : 33)} textAnchor="end" className="s halo">
        {words}
      </text>
    </g>
  );
}

/** The tag that is tied with a string to the sack which still lacks some. */
function Tag({ x, y, words, isLeft }: { x: number; y: number; words: string; isLeft: boolean }) {
  const width = words.length * 7.2 + 10;
  const side = isLeft ? -1 : 1;
  return (
    <g transform={`translate(${x + (isLeft ? 4 : 46)} ${y + 21})`}>
      <path d={`M${-9 * side} -6q${5 * side} -3 ${9 * side} 6`} fill="none" stroke="var(--ink)" />
      <path
        d={`M0 0l${7 * side} -11h${width * side}v22h${-width * side}z`}
        fill="var(--raised)"
        stroke="var(--ink)"
      />
      <circle cx={7 * side} r="1.8" fill="var(--ink)" />
      <text x={(width / 2 + 8) * side} y="5" textAnchor="middle" className="b">
        {words}
      </text>
    </g>
  );
}
