import { judgeTare } from '@sheafbook/packing';
import type { LastTare } from './queries.ts';

/** What ten empties of a kind weighed, and whether one tare serves all of that kind. */
export const presentTare = ({ tare, kind, weighedBy }: LastTare) => ({
  id: tare.containerTareId,
  kind: { id: kind.containerKindId, code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
  readings: tare.readings,
  ...judgeTare(tare.readings),
  weighedAt: tare.weighedAt.toISOString(),
  weighedBy,
});

export const presentTares = (tares: readonly LastTare[]) => ({ tares: tares.map(presentTare) });
