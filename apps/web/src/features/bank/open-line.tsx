import { useState } from 'react';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { OtherWay } from './other-way.tsx';
import type { Line, PostWish } from './queries.ts';
import { isSecondReceipt, Question } from './question.tsx';
import { useLine } from './use-line.ts';
import { useBankText, useEntryName } from './words.ts';

/** A line that waits: what it looks like, one tap to place it so, and every other way. */
export function OpenLine({ line, isNext }: { line: Line; isNext: boolean }) {
  const words = useBankText();
  const { duties } = useHouse();
  const actions = useLine(line.id);
  const [wish, setWish] = useState<PostWish | null>(null);
  const { posting, matching } = actions;
  const isTreasurer = duties.includes('treasurer');
  const post = (json: PostWish) => {
    setWish(json);
    posting.mutate(json);
  };
  return (
    <>
      <Suggested line={line} isNext={isNext} isTreasurer={isTreasurer} actions={actions} post={post} />
      {matching.error ? <ProblemSaid error={matching.error} /> : null}
      {isSecondReceipt(posting.error) && wish ? (
        <Question
          line={line}
          error={posting.error}
          isSending={posting.isPending || matching.isPending}
          onAnswer={(answer) => posting.mutate({ ...wish, answer })}
          onMatch={(entryId) => matching.mutate(entryId)}
        />
      ) : null}
      {isTreasurer ? (
        <details className="bank-more">
          <summary>{words.elsewise}</summary>
          <OtherWay line={line} actions={actions} post={post} />
        </details>
      ) : null}
    </>
  );
}

type SuggestedProps = {
  line: Line;
  isNext: boolean;
  isTreasurer: boolean;
  actions: ReturnType<typeof useLine>;
  post: (wish: PostWish) => void;
};

function Suggested({ line, isNext, isTreasurer, actions, post }: SuggestedProps) {
  const words = useBankText();
  const nameOf = useEntryName();
  const { format } = useHouse();
  const { entry, guess } = line.suggestion ?? { entry: null, guess: null };
  const { matching, posting } = actions;
  const className = isNext ? 'btn go' : 'btn';
  if (entry) {
    const what = nameOf(entry.what);
    return (
      <div className="bank-step">
        <p>
          {words.looksLikeEntry}{' '}
          <b>{words.entry(entry.entryNo, what, entry.party ?? '', format.day(entry.onDay))}</b>
        </p>
        {isTreasurer ? (
          <button
            type="button"
            className={className}
            disabled={matching.isPending}
            onClick={() => matching.mutate(entry.id)}
          >
            {words.isThisEntry}
          </button>
        ) : null}
      </div>
    );
  }
  if (!guess) return <p className="soft">{words.unknown}</p>;
  const party = guess.party ?? '';
  return (
    <div className="bank-step">
      <p>
        {words.looksLike[guess.as](party)}
        {words.by[guess.by]}{' '}
        <span className="soft">{words.posts[guess.as](format.money(Math.abs(line.minorUnits)), party)}</span>
      </p>
      {isTreasurer ? (
        <button
          type="button"
          className={className}
          disabled={posting.isPending}
          onClick={() => post(wishOf(guess))}
        >
          {words.postIt}
        </button>
      ) : null}
      {posting.error && !isSecondReceipt(posting.error) ? <ProblemSaid error={posting.error} /> : null}
    </div>
  );
}

type Guess = NonNullable<NonNullable<Line['suggestion']>['guess']>;

function wishOf({ as, partyId, buyId }: Guess): PostWish {
  if (as === 'bank-charge') return { as };
  if (as === 'supplier-payment') return { as, supplierId: partyId };
  return { as, householdId: partyId, ...(as === 'deposit' ? { buyId } : {}) };
}
