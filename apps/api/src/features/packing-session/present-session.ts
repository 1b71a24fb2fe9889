import type { PackingSessionRow } from '@sheafbook/db/tables';

/** A session's own facts. They stand apart, since a refused edit shows them too. */
export const presentSession = (session: PackingSessionRow) => ({
  id: session.packingSessionId,
  name: session.name,
  place: session.place,
  startsAt: session.startsAt.toISOString(),
  endsAt: session.endsAt.toISOString(),
  lines: session.lines,
  peopleALine: session.peopleALine,
  stations: session.stations,
  setupMinutes: session.setupMinutes,
  breakMinutes: session.breakMinutes,
  cleanDownMinutes: session.cleanDownMinutes,
  lineFeeMinorUnits: session.lineFeeMinorUnits,
  stage: session.stage,
  endedBecause: session.endedBecause,
  version: session.version,
});
