import type { LidText } from '../../text/en/lid.ts';
import type { Formats } from '../../text/format.ts';
import { nameIn } from '../../ui/name-in.ts';
import type { Lid } from './queries.ts';

/** What a jar is called in a list: its food, its kind, and in the store whose it is. */
export function nameOf(
  { food, kind, household }: Lid,
  { t, format, isStore }: { t: LidText; format: Formats; isStore: boolean },
): string {
  const whose = household === null ? t.common : t.of(household.name);
  return [nameIn(format.language, food), nameIn(format.language, kind), ...(isStore ? [whose] : [])].join(
    ', ',
  );
}
