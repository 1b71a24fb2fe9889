import { REMINDER_KINDS, STOPPABLE } from './kinds.ts';
import type { OwnWishes } from './use-cases.ts';

/** Each kind with whether it is told; what is about safety always is. */
export function presentWishes(wishes: OwnWishes) {
  const { language, timeZone, fromHour, toHour, digestHour, isEmailOn, version } = wishes;
  return {
    ...{ version, language: language === 'es' ? ('es' as const) : ('en' as const), timeZone },
    ...{ fromHour, toHour, digestHour, isEmailOn },
    kinds: REMINDER_KINDS.map((kind) => ({
      kind,
      mayStop: STOPPABLE.includes(kind),
      isOn: !wishes.stoppedKinds.includes(kind),
    })),
  };
}
