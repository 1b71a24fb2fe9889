import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { api, ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { Landing, OpenLorry } from './use-landing.ts';
import { useLandingText } from './words.ts';

const inside = api.storehouses[':storehouse'];
type EndLandingProps = { landing: Landing; lorry: OpenLorry | null; stage: string };

/** The first lorry ends with the landing of the buy; a later one ends by itself, and what it brought is split next. */
export function EndLanding({ landing, lorry, stage }: EndLandingProps) {
  const t = useLandingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const { param, queue } = landing;
  const ending = useMutation({
    mutationFn: async () => {
      if (stage === 'ordered') await ask(inside.buys[':buy'].landing.$post({ param }));
      else if (lorry)
        await ask(
          inside.deliveries[':delivery'].finish.$post({
            param: { storehouse, delivery: lorry.id },
            json: { version: lorry.version ?? 0 },
          }),
        );
    },
    onSuccess: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  const isLandable = stage === 'ordered' || lorry !== null;
  return (
    <NextStep>
      <p>{isLandable ? t.endWords : t.endedWords}</p>
      {queue.written.length > 0 ? <p className="soft">{t.endWaits}</p> : null}
      <ProblemSaid error={ending.error} />
      {isLandable ? (
        <button
          type="button"
          className="btn go"
          disabled={queue.written.length > 0 || ending.isPending}
          onClick={() => ending.mutate()}
        >
          {stage === 'ordered' ? t.endLanding : t.endLorry}
        </button>
      ) : (
        <Link className="btn go" to="/s/$storehouse/buys/$buy/split" params={{ storehouse, buy: param.buy }}>
          {t.toSplit}
        </Link>
      )}
    </NextStep>
  );
}
