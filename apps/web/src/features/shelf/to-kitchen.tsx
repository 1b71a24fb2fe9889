import { useHouse } from '../../ui/house.ts';
import { TakenSaid } from '../rotation/taken-said.tsx';
import { useTaking } from '../rotation/use-taking.ts';
import type { Shelved } from './queries.ts';
import { useShelfText } from './words.ts';

/** One tap to the kitchen, with what that does before it. */
export function ToKitchen({ shelved: { id, grams, openedOn } }: { shelved: Shelved }) {
  const words = useShelfText();
  const { format } = useHouse();
  const kitchen = useTaking();
  return (
    <div className="stack">
      <TakenSaid {...kitchen} />
      {grams === 0 ? null : (
        <>
          <p>
            {words.toKitchenSays(format.mass(grams))} {openedOn === null ? words.toKitchenOpens : null}
          </p>
          <div className="actions">
            <button
              type="button"
              className="btn"
              disabled={kitchen.taking.isPending}
              onClick={() => kitchen.taking.mutate(id)}
            >
              {words.toKitchen}
            </button>
          </div>
        </>
      )}
    </div>
  );
}
