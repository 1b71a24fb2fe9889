import { cautionOf } from '@sheafbook/keeping';
import { spellCode } from '@sheafbook/units';
import type { Lid, LidsRead } from './use-cases.ts';

const presentLid = ({ jar, household, session, closed, dueAt, state }: Lid) => ({
  id: jar.container.containerId,
  code: jar.container.containerCode,
  spelled: spellCode(jar.container.containerCode),
  kind: { code: jar.kind.kindCode, nameEn: jar.kind.nameEn, nameEs: jar.kind.nameEs },
  food: { code: jar.food.foodCode, nameEn: jar.food.nameEn, nameEs: jar.food.nameEs },
  grams: jar.grams,
  household,
  session,
  closedAt: closed.closedAt.toISOString(),
  dueAt: dueAt.toISOString(),
  state,
  /** When it was looked at last, of this closing or one before. */
  lastSaid: closed.said && { says: closed.said.says, at: closed.said.checkedAt.toISOString() },
});

export const presentLids = ({ of, lids }: LidsRead) => ({
  of,
  lids: lids.map(presentLid),
  caution: cautionOf('oxygen-free-moist'),
});
