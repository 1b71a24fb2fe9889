import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { bringableQuery, type LogBody, type PlanBody } from './queries.ts';
import type { Log } from './use-log.ts';
import { broughtHere, keyOfBag } from './waiting-bags.ts';
import { usePackingText } from './words.ts';

/** A household's part of a bag comes to the line: of those who wanted something packed. */
export function BringBag({ log, body, plan }: { log: Log; body: LogBody; plan: PlanBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const reading = useQuery(bringableQuery(log.param));
  const [chosen, setChosen] = useState('');
  const isRefused = log.waiting.some(({ act, refusal }) => act.kind === 'bring' && refusal !== null);
  const isThere = new Set([...body.bags.map(keyOfBag), ...broughtHere(log.waiting)]);
  return (
    <details open={body.bags.length === 0}>
      <summary>{t.bringBag}</summary>
      <Loaded reading={reading}>
        {({ bags }) => {
          const left = bags.filter((one) => !isThere.has(keyOfBag(one)));
          const bag = left.find((one) => keyOfBag(one) === chosen) ?? left[0];
          if (!bag && plan.lines.every(({ runs }) => runs.length === 0)) return <p>{t.nothingWished}</p>;
          if (!bag) return <p>{isRefused ? t.bringRefused : t.allBrought}</p>;
          return (
            <div className="stack">
              <Choice
                label={t.whose}
                value={keyOfBag(bag)}
                options={left.map((one) => ({
                  value: keyOfBag(one),
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
                onClick={() =>
                  log.write({
                    ...{ kind: 'bring', bag },
                    json: { bagId: bag.bagId, householdId: bag.householdId },
                  })
                }
              >
                {t.bring_}
              </button>
            </div>
          );
        }}
      </Loaded>
    </details>
  );
}
