import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { useOwnHousehold } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useFoodNames } from '../coverage/other-stock.tsx';
import { describeEater, type KnownEater } from './eater.ts';

export function EaterList({
  eaters,
  onChange,
}: {
  eaters: readonly KnownEater[];
  onChange?: (eater: KnownEater) => void;
}) {
  const t = useText();
  const param = useOwnHousehold();
  const nameOf = useFoodNames();
  const queries = useQueryClient();
  const removing = useMutation({
    mutationFn: ({ id, version }: KnownEater) =>
      ask(
        api.storehouses[':storehouse'].households[':household'].eaters[':eater'].$delete({
          param: { ...param, eater: id },
          query: { version: String(version) },
        }),
      ),
    onSuccess: () =>
      Promise.all(['eaters', 'coverage'].map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
  return (
    <div className="stack">
      <ul className="list" aria-label={t.eaters}>
        {eaters.map((eater) => (
          <li key={eater.id} className="row">
            <span>
              <b>{eater.name}</b> <span className="soft">{describeEater(t, eater, nameOf)}</span>
            </span>
            <span className="actions">
              {onChange ? (
                <button type="button" className="btn quiet" onClick={() => onChange(eater)}>
                  {t.change} <span className="sr">{eater.name}</span>
                </button>
              ) : null}
              <button
                type="button"
                className="btn quiet"
                disabled={removing.isPending}
                onClick={() => removing.mutate(eater)}
              >
                {t.remove} <span className="sr">{eater.name}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
      {removing.error ? <ProblemSaid error={removing.error} /> : null}
    </div>
  );
}
