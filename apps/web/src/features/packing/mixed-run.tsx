import { useMutation, useQueryClient } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { ofSession, type PlanBody, sessionApi } from './queries.ts';
import { usePackingText } from './words.ts';

type Mix = PlanBody['lines'][number]['mixes'][number];

/** A run of several households' food: what each puts in and has of it, before and after the grams changed hands. */
export function MixedRun({ mix, session }: { mix: Mix; session: PlanBody['session'] }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { shares } = mix;
  const signed = (grams: number) =>
    grams < 0 ? `−${`${format.count(-grams)} g`}` : `${format.count(grams)} g`;
  return (
    <section className="stack">
      <h2>{t.mix.title(nameIn(format.language, mix.food), mix.containers)}</h2>
      <p>{t.mix.says(`${format.count(mix.leftGrams)} g`)}</p>
      <Ledger
        caption={t.mix.title(nameIn(format.language, mix.food), mix.containers)}
        columns={[
          { name: t.mix.household },
          { name: t.mix.putIn, isNumber: true },
          { name: t.mix.containers, isNumber: true },
          { name: t.mix.left, isNumber: true },
          { name: t.mix.got, isNumber: true },
        ]}
        rows={shares.map((share) => ({
          key: share.householdId,
          cells: [
            share.household,
            `${format.count(share.putInGrams)} g`,
            <span key="containers">
              {format.count(share.containers)}
              {share.containers === share.aloneContainers ? null : (
                <span className="soft block">{t.mix.alone(share.aloneContainers)}</span>
              )}
            </span>,
            `${format.count(share.leftGrams)} g`,
            signed(share.gotGrams),
          ],
        }))}
      />
      <Booking mix={mix} session={session} />
    </section>
  );
}

function Booking({ mix, session }: { mix: Mix; session: PlanBody['session'] }) {
  const t = usePackingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session: session.id };
  const onSuccess = () => queries.invalidateQueries({ queryKey: ofSession(param) });
  const booking = useMutation({
    mutationFn: (json: { mixId: string; seen: string }) =>
      askOnce(`mix.${mix.id}`, json, (headers) => sessionApi.mixes.$post({ param, json }, { headers })),
    onSuccess,
  });
  const undoing = useMutation({
    mutationFn: (json: { packingMixId: string; reason: string }) =>
      askOnce(`mix.undo.${mix.id}`, json, (headers) =>
        sessionApi.mixes.undoing.$post({ param, json }, { headers }),
      ),
    onSuccess,
  });
  if (mix.shares.every(({ gotGrams }) => gotGrams === 0)) return null;
  if (session.stage !== 'running')
    return mix.postedId === null ? <p className="soft">{t.mix.later}</p> : null;
  const { postedId } = mix;
  return (
    <>
      {postedId === null ? (
        <button
          type="button"
          className="btn go"
          disabled={booking.isPending}
          onClick={() => booking.mutate({ mixId: mix.id, seen: mix.seen })}
        >
          {t.mix.book}
        </button>
      ) : (
        <>
          <p className="said well-said">{t.mix.booked}</p>
          <button
            type="button"
            className="btn quiet"
            disabled={undoing.isPending}
            onClick={() => undoing.mutate({ packingMixId: postedId, reason: t.mix.because })}
          >
            {t.mix.undo}
          </button>
        </>
      )}
      <ProblemSaid error={booking.error ?? undoing.error} />
    </>
  );
}
