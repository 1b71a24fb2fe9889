import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { BuyPage, Fill } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { LooseLink } from './loose-link.tsx';
import { pageFor } from './run-links.ts';
import { householdsQuery, type Missing, type Next } from './run-queries.ts';
import { type LeadTip, leadTipOf } from './tips.ts';
import { useRunText } from './words.ts';

const buys = api.storehouses[':storehouse'].buys[':buy'];

type StepProps = { buy: BuyPage; next: Next; fill: Fill };

/** What comes next and what it lacks; the page's one accent. */
export function RunStep({ buy, next, fill }: StepProps) {
  const words = useRunText();
  const { duties, format } = useHouse();
  const isCoordinator = duties.includes('coordinator');
  const tip = leadTipOf(buy, fill);
  const isOpen = Date.parse(buy.gatheringClosesAt) > Date.now();
  if (buy.stage === 'gathering' && tip && isOpen && isCoordinator)
    return (
      <>
        <AskForMore buy={buy} tip={tip} />
        <MissingList missing={next.missing} />
      </>
    );
  return (
    <NextStep title={words.nextStep}>
      <p>{format.sentence(next.words)}</p>
      <MissingList missing={next.missing} />
      {next.mayMove || next.who.length === 0 ? null : (
        <p className="soft">
          {words.whoMoves(next.who.map((duty) => words.duties[duty] ?? duty).join(', '))}
        </p>
      )}
      {next.mayMove || buy.stage === 'fixed' ? <Go buy={buy} next={next} /> : null}
    </NextStep>
  );
}

/** What the next move lacks, each with the page where it is mended. */
export function MissingList({ missing }: { missing: readonly Missing[] }) {
  const words = useRunText();
  const { duties } = useHouse();
  if (missing.length === 0) return null;
  return (
    <ul className="todo" aria-label={words.missingTitle}>
      {missing.map(({ code, count, words: said, page }) => {
        const to = pageFor(page, { isTreasurer: duties.includes('treasurer') });
        return (
          <li key={code}>
            <span>
              {count !== undefined && count > 1 ? <b>{`${count} × `}</b> : null}
              {said}
            </span>
            {to === null ? null : <LooseLink to={to}>{words.see}</LooseLink>}
          </li>
        );
      })}
    </ul>
  );
}

function Go({ buy, next }: { buy: BuyPage; next: Next }) {
  const words = useRunText();
  const { storehouse } = useHouse();
  const params = { storehouse, buy: buy.id };
  if (buy.stage === 'planning' && next.missing.length === 0) return <Open buy={buy} />;
  const hasFoods = buy.lines.length > 0;
  const pages = {
    planning: {
      to: hasFoods ? '/s/$storehouse/buys/$buy/quotes' : '/s/$storehouse/buys/$buy/plan',
      name: hasFoods ? words.toQuotes : words.editPlan,
    },
    gathering: { to: '/s/$storehouse/buys/$buy/fixing', name: words.lookBeforeFixing },
    fixed: { to: '/s/$storehouse/buys/$buy/order', name: words.toOrder },
    ordered: { to: '/s/$storehouse/buys/$buy/landing', name: words.toLanding },
    landed: { to: '/s/$storehouse/buys/$buy/split', name: words.toSplit },
    'shared-out': { to: '/s/$storehouse/buys/$buy/closing', name: words.toClosing },
  } as const;
  const found = pages[buy.stage as keyof typeof pages];
  if (!found) return null;
  return (
    <div className="actions">
      <Link className="btn go" to={found.to} params={params}>
        {found.name}
      </Link>
    </div>
  );
}

function Open({ buy }: { buy: BuyPage }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const households = useQuery(householdsQuery({ storehouse }));
  const param = { storehouse, buy: buy.id };
  const opening = useMutation({
    mutationFn: () => ask(buys.stage.$post({ param, json: { to: 'gathering' } })),
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      await queries.invalidateQueries({ queryKey: ['buys'] });
    },
  });
  const count = households.data?.filter(({ leftOn }) => leftOn === null).length;
  return (
    <>
      {count === undefined ? null : (
        <p className="soft">{words.openPosts(count, format.instant(buy.gatheringClosesAt))}</p>
      )}
      {opening.error ? <ProblemSaid error={opening.error} /> : null}
      <div className="actions">
        <button
          type="button"
          className="btn go"
          disabled={opening.isPending}
          onClick={() => opening.mutate()}
        >
          {words.openForPledges}
        </button>
      </div>
    </>
  );
}

/** The jump that is near: what it costs, what it saves, and the words to ask for it. */
function AskForMore({ buy, tip }: { buy: BuyPage; tip: LeadTip }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const [copied, setCopied] = useState<boolean | null>(null);
  const unit = tip.line.massUnit === 'kg' ? 'kg' : 'lb';
  const food = foodNameOf(tip.line, format.language);
  const by = format.instant(buy.gatheringClosesAt);
  const [cost, saved] = [format.money(tip.extraCostMinorUnits), format.money(tip.savedMinorUnits)];
  const message = words.askMessage({
    ...{ buy: buy.name, food, cost, saved, by },
    mass: `${format.count(tip.extraUnits)} ${unit}`,
  });
  const copy = async () => {
    // Over plain HTTP a browser has no clipboard for a page; then the words are marked by hand.
    const done = await navigator.clipboard?.writeText(message).then(
      () => true,
      () => false,
    );
    setCopied(done ?? false);
  };
  return (
    <NextStep title={words.askTitle(tip.extraBags, food, by)}>
      <p>{tip.extraCostMinorUnits > 0 ? words.askWords(tip.extraBags, cost, saved) : words.askFree(saved)}</p>
      <div className="actions">
        <button type="button" className="btn go" onClick={copy}>
          {words.copyAsk}
        </button>
        <Link className="btn" to="/s/$storehouse/buys/$buy/fixing" params={{ storehouse, buy: buy.id }}>
          {words.lookBeforeFixing}
        </Link>
      </div>
      {copied === null ? null : (
        <div role="status" className="stack">
          <p className="soft">{copied ? words.copied : words.copyByHand}</p>
          <p className="words-to-copy">{message}</p>
        </div>
      )}
    </NextStep>
  );
}
