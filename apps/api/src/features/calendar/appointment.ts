import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';

export const LANGUAGES = ['en', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];

/** A day of the storehouse's wall, or an instant with or without an end, as ISO texts. */
export type When = { readonly on: string } | { readonly startsAt: string; readonly endsAt: string | null };

/**
 * Something with a day or an hour, as the facts have it now. It is the same in every language and for everybody who may
 * see it, since what was told of it before is compared with it.
 */
export type Appointment = {
  readonly kind: string;
  /** With the kind, this names the appointment for good. */
  readonly id: string;
  readonly status: 'tentative' | 'confirmed' | 'cancelled';
  /** What somebody called the thing that it is about. */
  readonly subject: string;
  readonly place: string;
  readonly when: When;
  /** A day or a deadline leaves one's hours free. */
  readonly isBusy: boolean;
  /** The thing that a calendar can be about alone. */
  readonly item: { readonly kind: string; readonly id: string } | null;
  /** Whose it is; null when it is everybody's. */
  readonly householdId: string | null;
  /** Where it is seen to, inside the storehouse. */
  readonly path: string;
};

/** How a kind of appointment is called, and what a person does about it. */
export type KindWords = Readonly<
  Record<Language, { readonly title: (subject: string) => string; readonly about: string }>
>;

/**
 * Where appointments come from. It draws them from the facts at reading time: everybody's, and those of the household
 * that is acted for. Nothing older than `sinceOn` is asked for; what is older all the same is left out later.
 */
export type Source = {
  readonly words: Readonly<Record<string, KindWords>>;
  readonly list: (tx: Tx, context: Context, sinceOn: string) => Promise<Appointment[]>;
};
