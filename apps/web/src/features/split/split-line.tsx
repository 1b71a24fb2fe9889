import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { api, askOnce } from '../../api/client.ts';
import { buyQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import type { BuyPage } from '../buy/buy-body.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { BeforeWeighing } from '../scale/before-weighing.tsx';
import { Compare } from './compare.tsx';
import { type Compared, comparisonQuery, splitsQuery } from './queries.ts';
import './split.css';
import type { Split } from './split-body.ts';
import { SplitSheet } from './split-sheet.tsx';
import { useSplitText } from './words.ts';

/** One food: six rules side by side while something of it is nobody's, and the sheets of what was split. */
export function SplitLine() {
  const t = useSplitText();
  const { buy, line } = useParams({ from: '/s/$storehouse/buys/$buy/split/$line' });
  const { storehouse } = useHouse();
  const param = { storehouse, buy };
  const facts = useQuery(buyQuery(param));
  const splits = useQuery(splitsQuery(param));
  const compared = useQuery(comparisonQuery({ ...param, line }));
  return (
    <>
      <Link className="who no-print" to="/s/$storehouse/buys/$buy/split" params={param}>
        <BackIcon />
        {t.allFoods}
      </Link>
      <Loaded isPage reading={joined(facts, joined(splits, compared))}>
        {([page, [{ splits: found }, answer]]) => (
          <Line page={page} lineId={line} splits={found} compared={answer} />
        )}
      </Loaded>
    </>
  );
}

type LineProps = { page: BuyPage; lineId: string; splits: readonly Split[]; compared: Compared };

function Line({ page, lineId, splits, compared }: LineProps) {
  const t = useSplitText();
  const { format } = useHouse();
  const food = page.lines.find(({ id }) => id === lineId)?.food;
  const name = nameIn(format.language, food);
  const rounds = splits.filter((split) => split.lineId === lineId && split.undoneAt === null);
  const { comparison, why } = compared;
  useTitle(t.splitOf(name));
  const latest = rounds[0];
  return (
    <>
      {comparison && page.stage === 'landed' ? <BeforeWeighing /> : null}
      {comparison ? (
        <Compare buy={page.id} lineId={lineId} food={name} comparison={comparison} />
      ) : (
        <>
          <h1>{latest ? t.wasSplit(name, t.byRule[latest.rule] ?? latest.rule) : t.splitOf(name)}</h1>
          {latest ? null : <ProblemSaid error={why} />}
        </>
      )}
      {rounds.map((split, at) => (
        <section key={split.id} className="stack">
          {rounds.length > 1 || comparison ? <h2>{t.round(split.roundNo)}</h2> : null}
          <SplitSheet split={split} />
          <PaperLinks papers={[{ kind: 'split-sheet', path: `splits/${split.id}/paper` }]} />
          {at === 0 && page.stage === 'landed' ? <Undo split={split} /> : null}
        </section>
      ))}
    </>
  );
}

/** Until the buy is shared out, a split can be taken back whole and done by another rule. */
function Undo({ split }: { split: Split }) {
  const t = useSplitText();
  const { storehouse, duties } = useHouse();
  const queries = useQueryClient();
  const undoing = useMutation({
    mutationFn: () =>
      askOnce(`undo.${split.id}`, {}, (headers) =>
        api.storehouses[':storehouse'].splits[':split'].undoing.$post(
          { param: { storehouse, split: split.id } },
          { headers },
        ),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['buy', { storehouse, buy: split.buyId }] }),
  });
  if (!['coordinator', 'packing_lead'].some((duty) => duties.includes(duty))) return null;
  return (
    <div className="stack no-print">
      <p className="soft">{t.undoWords}</p>
      <ProblemSaid error={undoing.error} />
      <div>
        <button type="button" className="btn" disabled={undoing.isPending} onClick={() => undoing.mutate()}>
          {t.undo}
        </button>
      </div>
    </div>
  );
}
