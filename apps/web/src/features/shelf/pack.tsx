import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { Choice, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { FillFields, NO_FILL, readFill } from './fill-fields.tsx';
import { Filled } from './filled.tsx';
import { type Kind, kindsQuery, OF_STOCK, type OwnBag, ownBagsQuery } from './queries.ts';
import { useShelfText } from './words.ts';
import './shelf.css';

const containers = api.storehouses[':storehouse'].containers;
type Pour = InferRequestType<typeof containers.$post>['json'];

/** Fills containers from one's own share of a bag. */
export function Pack() {
  const words = useShelfText();
  const { storehouse } = useHouse();
  useTitle(words.packIt);
  const bags = useQuery(ownBagsQuery({ storehouse }));
  const kinds = useQuery(kindsQuery({ storehouse }));
  return (
    <>
      <h1>{words.packTitle}</h1>
      <Loaded reading={joined(bags, kinds)}>
        {([{ bags: own }, { containerKinds }]) => <PackForm bags={own} kinds={containerKinds} />}
      </Loaded>
    </>
  );
}

function PackForm({ bags, kinds }: { bags: readonly OwnBag[]; kinds: readonly Kind[] }) {
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const { draft, change, forget } = useDraft(`pack.${storehouse}`, { ...NO_FILL, bagId: '' });
  const [isAsked, setIsAsked] = useState(false);
  const bag = bags.find(({ bagId }) => bagId === draft.bagId) ?? bags[0];
  const fill = readFill(draft, { unit: format.massUnit, kinds, today: format.today() });
  const packing = useMutation({
    mutationFn: (json: Pour) =>
      askOnce(`pack.${storehouse}`, json, (headers) =>
        containers.$post({ param: { storehouse }, json }, { headers }),
      ),
    onSuccess: () => {
      forget();
      return Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] })));
    },
  });
  if (packing.data)
    return (
      <Filled
        filled={packing.data}
        canUndo
        onMore={() => {
          packing.reset();
          setIsAsked(false);
          change({ each: '', count: '1' });
        }}
      />
    );
  if (!bag) return <p>{words.noBags}</p>;
  const problems = problemsOf(packing.error);
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (!fill) return;
        const { kind, ...rest } = fill;
        packing.mutate({ bagId: bag.bagId, containerKindId: kind.id, ...rest, note: '' });
      }}
    >
      <Choice
        label={words.bag}
        value={bag.bagId}
        options={bags.map((one) => ({
          value: one.bagId,
          name: words.bagOption(nameIn(format.language, one.food), one.bagNo, format.mass(one.grams)),
        }))}
        onChange={(bagId) => change({ bagId })}
      />
      {bag.isHeld ? <p className="said">{words.onHold}</p> : null}
      <FillFields
        draft={draft}
        change={change}
        kinds={kinds}
        bulkMicrograms={bag.food.bulkMicrogramsPerMillilitre}
        isAsked={isAsked}
        problems={problems}
      />
      {fill && fill.count * fill.gramsEach <= bag.grams ? (
        <p>
          {words.packSays(
            fill.count,
            nameIn(format.language, fill.kind),
            format.mass(fill.gramsEach),
            format.mass(fill.count * fill.gramsEach),
            format.mass(bag.grams - fill.count * fill.gramsEach),
          )}
        </p>
      ) : null}
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={packing.error} />}
      <button type="submit" className="btn go" disabled={packing.isPending || bag.isHeld}>
        {words.pack}
      </button>
    </Form>
  );
}
