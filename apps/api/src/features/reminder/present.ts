import type { Outside } from '../../platform/context.ts';
import { REMINDER_KINDS, STOPPABLE } from './kinds.ts';
import type { OwnWishes } from './queries.ts';

/** Each kind with whether it is told; what is about safety always is. */
export function presentWishes(wishes: OwnWishes, outside: Pick<Outside, 'mail'> = {}) {
  const { language, timeZone, fromHour, toHour, digestHour, isEmailOn, version } = wishes;
  return {
    ...{ version, language: language === 'es' ? ('es' as const) : ('en' as const), timeZone },
    ...{ fromHour, toHour, digestHour, isEmailOn },
    /** Whether this server sends any; without it everything is told inside alone. */
    isEmailPossible: outside.mail !== undefined,
    kinds: REMINDER_KINDS.map((kind) => ({
      kind,
      mayStop: STOPPABLE.includes(kind),
      isOn: !wishes.stoppedKinds.includes(kind),
    })),
  };
}
