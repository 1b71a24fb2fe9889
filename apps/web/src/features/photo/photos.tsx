import { type ChangeEvent, useId, useRef, useState } from 'react';
import { ApiProblem } from '../../api/problem.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import './photos.css';
import { usePhotos } from './use-photos.ts';
import type { Subject } from './waiting.ts';
import { usePhotoText } from './words.ts';

const TAKERS = ['coordinator', 'packing_lead', 'treasurer'];

/**
 * The photos of one thing, with a button to take one: for whoever lands bags or keeps claims, or for whom the page says so.
 * A photo taken without a signal waits on the phone.
 */
export function Photos({ isTaker, ...of }: Subject & { isTaker?: boolean }) {
  const t = usePhotoText();
  const { storehouse, duties, personId } = useHouse();
  const shown = { ...of, storehouse };
  const { kept, waiting, adding, sending, isSending, dropping, removing } = usePhotos(shown);
  const [openId, setOpenId] = useState<string | null>(null);
  const mayTake = isTaker ?? TAKERS.some((duty) => duties.includes(duty));
  const refusal = sending.error instanceof ApiProblem && sending.error.isAnswered ? sending.error : null;
  const [first] = waiting;
  return (
    <div className="photos">
      {/* Nothing stands here while they come, or what is beneath would move away under a thumb. */}
      {kept.data === undefined && !kept.error ? null : (
        <Loaded reading={kept}>
          {({ photos }) => (
            <ul className="thumbs">
              {photos.map(({ id, addedBy }, at) => (
                <li key={id}>
                  <button
                    type="button"
                    className="thumb"
                    aria-expanded={openId === id}
                    onClick={() => setOpenId(openId === id ? null : id)}
                  >
                    <img
                      src={`/api/storehouses/${storehouse}/photos/${id}`}
                      alt={t.photoNo(at + 1, photos.length)}
                      loading="lazy"
                    />
                  </button>
                  {openId === id && mayTake && (addedBy === personId || duties.includes('coordinator')) ? (
                    <button type="button" className="btn quiet" onClick={() => removing.mutate(id)}>
                      {t.takeAway}
                    </button>
                  ) : null}
                </li>
              ))}
            </ul>
          )}
        </Loaded>
      )}
      <ProblemSaid error={removing.error} />
      {waiting.length > 0 ? <p className="said watch-said">{t.waits(waiting.length)}</p> : null}
      {refusal && first ? (
        <div className="stack">
          <p className="problem">{t.refused}</p>
          <ProblemSaid error={refusal} />
          <div className="actions">
            <button type="button" className="btn" disabled={isSending} onClick={() => sending.mutate()}>
              {t.sendAgain}
            </button>
            <button type="button" className="btn quiet" onClick={() => dropping.mutate(first.id)}>
              {t.dropIt}
            </button>
          </div>
        </div>
      ) : null}
      {mayTake ? (
        <TakePhoto isBusy={adding.isPending} hasFailed={adding.isError} take={adding.mutate} />
      ) : null}
    </div>
  );
}

function TakePhoto(props: { isBusy: boolean; hasFailed: boolean; take: (file: File) => void }) {
  const t = usePhotoText();
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (file) props.take(file);
    event.target.value = ''; // the same file may be chosen again
  };
  return (
    <div className="field">
      <button
        type="button"
        className="btn"
        disabled={props.isBusy}
        aria-describedby={`${id}-words ${id}-problem`}
        onClick={() => input.current?.click()}
      >
        {t.addPhoto}
      </button>
      <input ref={input} hidden type="file" accept="image/*" capture="environment" onChange={choose} />
      <span id={`${id}-words`} className="soft">
        {t.addWords}
      </span>
      <span id={`${id}-problem`} className="problem" role="alert">
        {props.hasFailed ? t.notAPicture : ''}
      </span>
    </div>
  );
}
