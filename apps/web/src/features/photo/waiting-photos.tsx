import { useQueryClient } from '@tanstack/react-query';
import { useLocation } from '@tanstack/react-router';
import { useSyncExternalStore } from 'react';
import { listenOutside } from '../../api/outside.ts';
import { ApiProblem, isLastWord } from '../../api/problem.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { type Mark, marksOf, markWaiting, unmark } from './marks.ts';
import { sendPhoto } from './send-photo.ts';
import { dropWaiting, listAllWaiting } from './waiting.ts';
import { usePhotoText } from './words.ts';

/** The pages that take photos show what waits beside them. */
const SHOWS_IT = /\/(equipment|buys)\/./;

/** Photos that this person took without a signal; sent one after another from whatever page is open. */
export function WaitingPhotos() {
  const t = usePhotoText();
  const house = useHouse();
  const queries = useQueryClient();
  const { pathname } = useLocation();
  const text = useSyncExternalStore(listenOutside, () => JSON.stringify(marksOf(house)));
  const marks = JSON.parse(text) as readonly Mark[];
  const open = marks.filter(({ refusal }) => refusal === null);
  const send = async () => {
    const { storehouse, personId } = house;
    const photos = await listAllWaiting(storehouse);
    for (const { id, refusal } of marksOf(house)) {
      if (refusal !== null) continue;
      const photo = photos.find((one) => one.id === id);
      try {
        if (photo) await sendPhoto(photo);
        unmark({ storehouse, personId }, id);
      } catch (error) {
        if (!(error instanceof ApiProblem) || !isLastWord(error.status)) break;
        markWaiting(house, id, error.message);
      }
    }
    await queries.invalidateQueries({ queryKey: ['photos', storehouse] });
    await queries.invalidateQueries({ queryKey: ['photos-waiting', storehouse] });
  };
  useSending(`photos.${house.storehouse}`, open.length > 0, send);
  const leaveOut = async (id: string) => {
    await dropWaiting(id);
    unmark(house, id);
  };
  if (SHOWS_IT.test(pathname)) return null;
  return (
    <>
      {open.length === 0 ? null : (
        <p className="said watch-said" role="status">
          {t.waits(open.length)}
        </p>
      )}
      {marks.map(({ id, refusal }) =>
        refusal === null ? null : (
          <section key={id} className="stack">
            <p className="said">
              {t.refused} {refusal}
            </p>
            <div className="actions">
              <button type="button" className="btn" onClick={() => markWaiting(house, id)}>
                {t.sendAgain}
              </button>
              <button type="button" className="btn" onClick={() => void leaveOut(id)}>
                {t.dropIt}
              </button>
            </div>
          </section>
        ),
      )}
    </>
  );
}
