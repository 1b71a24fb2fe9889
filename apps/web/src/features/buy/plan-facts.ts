import type { BuyPage } from './buy-body.ts';
import { instantIn, wallTimeIn } from './instant-in.ts';

/** Name, days and place as they are typed. */
export type FactsDraft = {
  readonly name: string;
  readonly closesOn: string;
  readonly closesAt: string;
  readonly orderOn: string;
  readonly landingOn: string;
  readonly landingPlace: string;
};

export const NO_FACTS: FactsDraft = {
  name: '',
  closesOn: '',
  closesAt: '23:00',
  orderOn: '',
  landingOn: '',
  landingPlace: '',
};

export function factsDraftOf(buy: BuyPage, timeZone: string): FactsDraft {
  const { day: closesOn, time: closesAt } = wallTimeIn(timeZone, buy.gatheringClosesAt);
  const { name, orderOn, landingPlace } = buy;
  return { name, closesOn, closesAt, orderOn, landingOn: buy.landingOn ?? '', landingPlace };
}

/** The facts as they are sent; undefined while a day is not chosen yet. */
export function factsOf(draft: FactsDraft, timeZone: string) {
  const { name, closesOn, closesAt, orderOn, landingOn, landingPlace } = draft;
  if (closesOn === '' || closesAt === '' || orderOn === '') return undefined;
  return {
    name,
    gatheringClosesAt: instantIn(timeZone, `${closesOn}T${closesAt}`),
    orderOn,
    landingOn: landingOn === '' ? null : landingOn,
    landingPlace,
  };
}
