import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { api, askOnce } from '../../api/client.ts';
import { buyQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import type { BuyPage } from '../buy/buy-body.ts';
import { splitsQuery } from './queries.ts';
import type { Split } from './split-body.ts';
import { useSplitText } from './words.ts';

/** The foods of a buy on their way from the floor to the households. */
export function SplitList() {
  const t = useSplitText();
  const { buy } = useParams({ from: '/s/$storehouse/buys/$buy/split' });
  const { storehouse } = useHouse();
  const param = { storehouse, buy };
  const facts = useQuery(buyQuery(param));
  const splits = useQuery(splitsQuery(param));
  useTitle(t.splitting);
  return (
    <Loaded isPage reading={joined(facts, splits)}>
      {([page, { splits: found }]) => (
        <Foods page={page} splits={found.filter(({ undoneAt }) => undoneAt === null)} />
      )}
    </Loaded>
  );
}

function Foods({ page, splits }: { page: BuyPage; splits: readonly Split[] }) {
  const t = useSplitText();
  const { storehouse, format, duties } = useHouse();
  const params = { storehouse, buy: page.id };
  const roundsOf = (lineId: string) => splits.filter((split) => split.lineId === lineId);
  const open = page.lines.filter(({ id }) => roundsOf(id).length === 0).length;
  const isLanded = page.stage === 'landed';
  return (
    <>
      <div className="row place no-print">
        <Link className="who" to="/s/$storehouse/buys/$buy" params={params}>
          <BackIcon />
          {page.name}
        </Link>
      </div>
      <h1>{!isLanded && splits.length === 0 ? t.notLanded : t.splitStands(open, page.lines.length)}</h1>
      {isLanded && open === 0 && duties.includes('coordinator') ? <ShareOut buy={page.id} /> : null}
      <ul className="list">
        {page.lines.map((line) => {
          const rounds = roundsOf(line.id);
          const name = nameIn(format.language, line.food);
          const [latest] = rounds;
          const grams = rounds.reduce((sum, round) => sum + round.awardedGrams, 0);
          return (
            <li key={line.id}>
              <Link to="/s/$storehouse/buys/$buy/split/$line" params={{ ...params, line: line.id }}>
                <span>
                  <b>{name}</b>
                  <br />
                  <span className="soft">
                    {latest
                      ? t.splitBy(t.byRule[latest.rule] ?? latest.rule, format.mass(grams))
                      : t.compareRules}
                  </span>
                </span>
                <State kind={latest ? 'well' : 'watch'} word={latest ? t.isSplit : t.notSplit} />
              </Link>
            </li>
          );
        })}
      </ul>
      {splits.length > 0 ? (
        <p className="no-print">
          <Link to="/s/$storehouse/split-simulation" params={{ storehouse }} className="btn quiet">
            {t.simulation}
          </Link>
        </p>
      ) : null}
      {page.stage === 'shared-out' ? (
        <div className="actions">
          <Link className="btn" to="/s/$storehouse/buys/$buy/handing-over" params={params}>
            {t.toHandingOver}
          </Link>
        </div>
      ) : null}
    </>
  );
}

/** Grams have their owners; from here their cost has too. */
function ShareOut({ buy }: { buy: string }) {
  const t = useSplitText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy };
  const sharing = useMutation({
    mutationFn: () =>
      askOnce(`share-out.${buy}`, {}, (headers) =>
        api.storehouses[':storehouse'].buys[':buy']['sharing-out'].$post({ param }, { headers }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  return (
    <NextStep title={t.shareOutTitle}>
      <p>{t.shareOutPosts}</p>
      <ProblemSaid error={sharing.error} />
      <div>
        <button
          type="button"
          className="btn go"
          disabled={sharing.isPending}
          onClick={() => sharing.mutate()}
        >
          {t.shareOut}
        </button>
      </div>
    </NextStep>
  );
}
