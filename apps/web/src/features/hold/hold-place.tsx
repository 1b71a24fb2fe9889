import { useQuery } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { useDraft } from '../../ui/use-draft.ts';
import { placesQuery } from '../place/queries.ts';
import { inside } from './queries.ts';
import { SentenceForm } from './sentence-form.tsx';
import { useHoldText } from './words.ts';

/** Stops all that stands in a place of the store's; a household's own places are nobody else's to name. */
export function HoldPlace() {
  const words = useHoldText();
  const { storehouse } = useHouse();
  const navigate = useNavigate();
  const places = useQuery(placesQuery({ storehouse }));
  const { draft, change, forget } = useDraft('hold.place', { placeId: '' });
  const stores = (places.data?.places ?? []).filter(({ isStores }) => isStores);
  if (stores.length === 0) return null;
  const begin = async (reason: string) => {
    const json = { of: { scope: 'place' as const, placeId: draft.placeId }, reason };
    const hold = await ask(inside.holds.$post({ param: { storehouse }, json }));
    forget();
    await navigate({ to: '/s/$storehouse/holds/$hold', params: { storehouse, hold: hold.id } });
  };
  return (
    <details>
      <summary>{words.holdPlace}</summary>
      <SentenceForm
        name="hold.place.reason"
        label={words.reasonOfHold}
        says={words.holdPlaceSays}
        button={words.begin}
        isReady={draft.placeId !== ''}
        send={begin}
      >
        <Choice
          label={words.place}
          value={draft.placeId}
          options={[
            { value: '', name: words.choosePlace },
            ...stores.map(({ id, name }) => ({ value: id, name })),
          ]}
          onChange={(placeId) => change({ placeId })}
        />
      </SentenceForm>
    </details>
  );
}
