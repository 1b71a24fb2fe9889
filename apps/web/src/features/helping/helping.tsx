import { useQuery } from '@tanstack/react-query';
import { actingIn, startActing } from '../../api/acting.ts';
import { useHouse } from '../../ui/house.ts';
import { helpingQuery } from '../paper/queries.ts';
import { useHelpingText } from './words.ts';

/** The households that this person may act for now; whoever may for none sees nothing of it. */
export function Helping() {
  const words = useHelpingText();
  const { storehouse, format } = useHouse();
  const { data } = useQuery(helpingQuery({ storehouse }));
  const grants = (data?.helpers ?? []).filter(({ isInForce }) => isInForce);
  if (grants.length === 0 || actingIn(storehouse)) return null;
  return (
    <section className="stack">
      <h2>{words.title}</h2>
      <p>{words.words}</p>
      <ul className="list">
        {grants.map(({ id, householdId, householdName, expiresAt }) => (
          <li key={id} className="row place">
            <span>{words.until(householdName, format.instant(expiresAt))}</span>
            <button
              type="button"
              className="btn"
              onClick={() => startActing({ storehouse, household: householdId, householdName })}
            >
              {words.act(householdName)}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
