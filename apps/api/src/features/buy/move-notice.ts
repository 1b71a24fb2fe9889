import type { BuyRow } from '@sheafbook/db/tables';
import { dayInZone } from '@sheafbook/units';
import type { Actor } from '../../platform/actor.ts';
import { endSentence } from '../../platform/end-sentence.ts';
import type { NoticeDraft } from '../notice/queries.ts';

/**
 * What a move of a buy's stage tells, and whom: that it gathers is for everyone, whatever comes after for those who
 * pledged in it. A buy that closes has nothing left to do for anybody.
 */
export function noticeOfMove(
  from: string,
  moved: BuyRow,
  { reason, actor }: { reason: string; actor: Actor },
): NoticeDraft | null {
  const { buyId, name } = moved;
  const says = wordsOfMove(from, moved, { reason, timeZone: actor.timeZone });
  if (says === null) return null;
  const audience = from === 'planning' && moved.stage === 'gathering' ? ({ to: 'everyone' } as const) : null;
  return {
    kind: 'stage',
    audience: audience ?? { to: 'buy', buyId },
    ...{ about: name, says, buyId, path: `/buys/${buyId}` },
  };
}

function wordsOfMove(
  from: string,
  { name, stage, gatheringClosesAt, landingOn }: BuyRow,
  { reason, timeZone }: { reason: string; timeZone: string },
): string | null {
  if (stage === 'gathering' && from === 'planning')
    return `${name} gathers pledges until ${dayInZone(gatheringClosesAt.getTime(), timeZone)}. Pledge what you want of it.`;
  if (stage === 'gathering') return `${name} gathers pledges again: ${reason} Look at your pledge.`;
  if (stage === 'fixed') return `${name} is fixed. Look at what you were promised and see to your deposit.`;
  if (stage === 'ordered')
    return landingOn === null
      ? `${name} is ordered. The day on which it lands is not settled yet.`
      : `${name} is ordered and lands on ${landingOn}. Hands are wanted on that day.`;
  if (stage === 'landed') return `${name} has landed. It is weighed and shared out next.`;
  if (stage === 'shared-out') return `${name} is shared out. Choose an hour to fetch your food.`;
  if (stage === 'called-off') return `${name} is called off: ${reason} What you paid stands on your balance.`;
  return null;
}

/** The day on which the food lands was moved, or its place, or one of them is not settled any more. */
export function noticeOfLanding(before: BuyRow, edited: BuyRow): NoticeDraft | null {
  const { buyId, name, landingOn, landingPlace } = edited;
  const isDayMoved = landingOn !== before.landingOn;
  const isPlaceMoved = landingPlace !== before.landingPlace;
  if (!isDayMoved && !isPlaceMoved) return null;
  return {
    kind: 'landing-moved',
    audience: { to: 'buy', buyId },
    ...{ about: name, buyId, path: `/buys/${buyId}`, dueOn: landingOn },
    says: wordsOfLanding(edited, { isDayMoved, isPlaceMoved }),
  };
}

function wordsOfLanding(
  { name, landingOn, landingPlace }: BuyRow,
  { isDayMoved, isPlaceMoved }: { isDayMoved: boolean; isPlaceMoved: boolean },
): string {
  const here = landingPlace === '' ? null : endSentence(landingPlace);
  if (!isDayMoved)
    return here === null ? `The place where ${name} lands is open again.` : `${name} now lands here: ${here}`;
  if (landingOn === null) {
    if (!isPlaceMoved) return `The day on which ${name} lands is open again.`;
    return here === null
      ? `When and where ${name} lands is open again.`
      : `The day on which ${name} lands is open again; the place is now: ${here}`;
  }
  if (!isPlaceMoved) return `${name} now lands on ${landingOn}.`;
  return here === null
    ? `${name} now lands on ${landingOn}; the place is open again.`
    : `${name} now lands on ${landingOn}; the place is now: ${here}`;
}
