import { spellCode } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { api, askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { OF_STOCK } from './queries.ts';
import { useShelfText } from './words.ts';

const pours = api.storehouses[':storehouse'].pours[':entry'];
type FilledBody = {
  readonly entryId: string;
  readonly containers: readonly { readonly id: string; readonly code: string }[];
  readonly warnings: readonly string[];
};

/** The codes of what was just filled, to be written on labels; a pour can be put back. */
export function Filled({
  filled,
  canUndo,
  onMore,
}: {
  filled: FilledBody;
  canUndo: boolean;
  onMore: () => void;
}) {
  const words = useShelfText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const undoing = useMutation({
    mutationFn: () => {
      const json = { reason: words.undoReason };
      return askOnce(`undo.${filled.entryId}`, json, (headers) =>
        pours.undoing.$post({ param: { storehouse, entry: filled.entryId }, json }, { headers }),
      );
    },
    onSuccess: () => Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
  return (
    <div className="stack" role="status">
      <p className="said well-said">
        {undoing.isSuccess ? words.undone : words.packedTitle(filled.containers.length)}
      </p>
      {undoing.isSuccess ? null : (
        <>
          {filled.warnings.map((warning) => (
            <p key={warning} className="said watch-said">
              {warning}
            </p>
          ))}
          <p className="codes">
            {filled.containers.map(({ id, code }) => (
              <span key={id} className="code">
                {spellCode(code)}
              </span>
            ))}
          </p>
        </>
      )}
      <ProblemSaid error={undoing.error} />
      <div className="actions">
        <Link className="btn" to="/s/$storehouse/shelf" params={{ storehouse }}>
          {words.toShelf}
        </Link>
        <button type="button" className="btn" onClick={onMore}>
          {words.packMore}
        </button>
        {canUndo && !undoing.isSuccess ? (
          <button type="button" className="btn" disabled={undoing.isPending} onClick={() => undoing.mutate()}>
            {words.undo}
          </button>
        ) : null}
      </div>
    </div>
  );
}
