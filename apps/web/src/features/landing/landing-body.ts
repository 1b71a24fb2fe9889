import type { InferResponseType } from 'hono/client';
import type { api } from '../../api/client.ts';
import { nameIn } from '../../ui/name-in.ts';

type InHouse = (typeof api.storehouses)[':storehouse'];
type OfBuy = InHouse['buys'][':buy'];
export type Sheet = InferResponseType<OfBuy['landing']['$get'], 200>;
export type SheetLine = Sheet['lines'][number];
export type Proposal = Sheet['proposedClaims'][number];
export type Delivery = Exclude<
  InferResponseType<OfBuy['deliveries']['$get'], 200>,
  string
>['deliveries'][number];
export type Bag = InferResponseType<InHouse['bags'][':bag']['$get'], 200>;

/** A food's name in the reader's language; a size that is no food of the buy any more goes by its label. */
export const nameOfLine = (
  { food, bagLabel }: Pick<SheetLine, 'food' | 'bagLabel'>,
  language: 'en' | 'es',
): string => (food === null ? bagLabel : nameIn(language, food));

/** A code as it is said and written: three and three. */
export const spoken = (code: string): string => `${code.slice(0, 3)} ${code.slice(3)}`;
