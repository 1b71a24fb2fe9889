import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { placesQuery } from '../place/queries.ts';
import { OF_STOCK } from '../shelf/queries.ts';
import { inside, type KeepingSheet, type Move } from './queries.ts';
import { useKeepingText } from './words.ts';

const NOWHERE = '';

/** Says where a container stands since a day, alone or with the others of its lot. */
export function MoveForm({ sheet, lotIds }: { sheet: KeepingSheet; lotIds: readonly string[] }) {
  const words = useKeepingText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const { places } = useQuery(placesQuery({ storehouse })).data ?? { places: [] };
  const [first] = sheet.stays;
  // Nobody has said yet where it stands: most likely there since it was packed.
  const start = sheet.place === null && first && sheet.stays.length === 1 ? first.fromOn : format.today();
  const {
    draft: { movedOn, placeId, isWholeLot },
    change,
    reset,
  } = useDraft(`move.${sheet.containerId}`, {
    movedOn: start,
    placeId: sheet.place?.id ?? NOWHERE,
    isWholeLot: false,
  });
  const moving = useMutation({
    mutationFn: (json: Move) =>
      askOnce(`move.${sheet.containerId}`, json, (headers) =>
        inside['container-moves'].$post({ param: { storehouse }, json }, { headers }),
      ),
    onSuccess: () => {
      reset();
      return Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] })));
    },
  });
  const problems = problemsOf(moving.error);
  return (
    <Form
      onSend={() => {
        const containerIds = isWholeLot ? [sheet.containerId, ...lotIds] : [sheet.containerId];
        moving.mutate({ containerIds, placeId: placeId === NOWHERE ? null : placeId, movedOn });
      }}
    >
      <h3>{words.moveTitle}</h3>
      <div className="pair">
        <Choice
          label={words.place}
          value={placeId}
          options={[
            { value: NOWHERE, name: words.unknownPlace },
            ...places.map(({ id, name, isStores }) => ({
              value: id,
              name: isStores ? words.ofStore(name) : name,
            })),
          ]}
          onChange={(placeId) => change({ placeId })}
          problem={problems.placeId}
        />
        <Field
          label={words.sinceWhen}
          type="date"
          max={format.today()}
          value={movedOn}
          onChange={(event) => change({ movedOn: event.target.value })}
          problem={problems.movedOn}
        />
      </div>
      {lotIds.length === 0 ? null : (
        <Check
          label={words.wholeLot(lotIds.length)}
          isOn={isWholeLot}
          onChange={(isWholeLot) => change({ isWholeLot })}
        />
      )}
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={moving.error} />}
      {moving.isSuccess ? <p role="status">{words.moved}</p> : null}
      <button type="submit" className="btn" disabled={moving.isPending}>
        {words.move}
      </button>
    </Form>
  );
}
