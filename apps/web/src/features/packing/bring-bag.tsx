import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { bringableQuery, type LogBody, ofSession, type PlanBody, sessionApi } from './queries.ts';
import type { Log } from './use-log.ts';
import { usePackingText } from './words.ts';

/** A household's part of a bag comes to the line: of those who wanted something packed. */
export function BringBag({ log, body, plan }: { log: Log; body: LogBody; plan: PlanBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const queries = useQueryClient();
  const { param } = log;
  const reading = useQuery(bringableQuery(param));
  const [chosen, setChosen] = useState('');
  const bringing = useMutation({
    mutationFn: (json: { bagId: string; householdId: string }) => ask(sessionApi.bags.$post({ param, json })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
  });
  const isThere = new Set(body.bags.map(({ bagId, householdId }) => `${bagId} ${householdId}`));
  return (
    <details open={body.bags.length === 0}>
      <summary>{t.bringBag}</summary>
      <Loaded reading={reading}>
        {({ bags }) => {
          const left = bags.filter(({ bagId, householdId }) => !isThere.has(`${bagId} ${householdId}`));
          const bag = left.find(({ bagId, householdId }) => `${bagId} ${householdId}` === chosen) ?? left[0];
          if (!bag)
            return (
              <p>{plan.lines.every(({ runs }) => runs.length === 0) ? t.nothingWished : t.allBrought}</p>
            );
          return (
            <div className="stack">
              <Choice
                label={t.whose}
                value={`${bag.bagId} ${bag.householdId}`}
                options={left.map((one) => ({
                  value: `${one.bagId} ${one.householdId}`,
                  name: t.bringOption(
                    nameIn(format.language, one.food),
                    one.household,
                    one.bagNo,
                    format.mass(one.grams),
                  ),
                }))}
                onChange={setChosen}
              />
              <button
                type="button"
                className="btn"
                disabled={bringing.isPending}
                onClick={() => bringing.mutate({ bagId: bag.bagId, householdId: bag.householdId })}
              >
                {t.bring_}
              </button>
              <ProblemSaid error={bringing.error} />
            </div>
          );
        }}
      </Loaded>
    </details>
  );
}
