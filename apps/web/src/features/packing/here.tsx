import { useMutation, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { ofSession, sessionApi } from './queries.ts';

/** Ticks that a household stands at its line, so that its time is not given away; pressed again, it takes that back. */
export function Here({
  session,
  slot,
  label,
}: {
  session: string;
  slot: { id: string; cameAt: string | null };
  label: string;
}) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session };
  const ticking = useMutation({
    mutationFn: () =>
      ask(
        sessionApi.slots[':slot'].arrival.$put({
          param: { ...param, slot: slot.id },
          json: { isHere: slot.cameAt === null },
        }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
  });
  return (
    <>
      <button
        type="button"
        className="btn"
        aria-pressed={slot.cameAt !== null}
        disabled={ticking.isPending}
        onClick={() => ticking.mutate()}
      >
        {label}
      </button>
      <ProblemSaid error={ticking.error} />
    </>
  );
}
