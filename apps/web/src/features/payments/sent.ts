import { useHouse } from '../../ui/house.ts';
import type { PostBody, PostField } from '../books/post-form.tsx';
import { isTill, useTills } from '../books/tills.ts';
import { useBooksText } from '../books/words.ts';

/** The fields that every payment has, in the order that they are asked. */
export function usePaymentFields() {
  const t = useBooksText();
  const { format } = useHouse();
  const tills = useTills();
  const amount: PostField = { name: 'minorUnits', label: t.amount, kind: 'money' };
  const day: PostField = { name: 'onDay', label: t.day, kind: 'day', start: format.today() };
  const note: PostField = { name: 'note', label: t.note, kind: 'text', isOptional: true };
  const reason: PostField = { name: 'reason', label: t.reason, kind: 'text' };
  const till = (label: string): PostField => ({ name: 'till', label, kind: 'choice', options: tills });
  return { amount, day, note, reason, till };
}

/** What every money command is sent with. */
export const moneyOf = ({ minorUnits, onDay, note }: PostBody) => ({
  minorUnits: Number(minorUnits),
  note: String(note ?? ''),
  ...(onDay === undefined ? {} : { onDay: String(onDay) }),
});

export const tillMoneyOf = (body: PostBody) => ({
  ...moneyOf(body),
  till: isTill(body.till) ? body.till : 'bank',
});

export const explainedOf = (body: PostBody) => {
  const { note: _, ...money } = moneyOf(body);
  return { ...money, reason: String(body.reason) };
};
