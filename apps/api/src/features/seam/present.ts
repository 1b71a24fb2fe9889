import type { SealCheckRow, SealMachineRow, SeamLimitRow } from '@sheafbook/db/tables';
import type { SeamFault, SeamMeasures } from '@sheafbook/packing';
import { spellCode } from '@sheafbook/units';
import type { SealHeld } from './queries.ts';
import type { ReCanned } from './queries-re-can.ts';
import type { WatchReading } from './use-cases.ts';
import type { Doubt, SeamLog } from './use-cases-log.ts';
import type { OwnDoubts } from './use-cases-own.ts';
import type { Moved } from './use-cases-re-can.ts';

export const presentMachine = ({ sealMachineId, name, kind, outSince, version }: SealMachineRow) => ({
  id: sealMachineId,
  name,
  kind,
  outSince: outSince?.toISOString() ?? null,
  version,
});

const presentLimit = ({ storehouseId: _, ...limit }: SeamLimitRow) => limit;

/** A container in doubt, with who has it. */
export const presentHold = ({ hold, code, serial, grams, household, check }: SealHeld) => ({
  containerId: hold.containerId,
  code,
  spelled: spellCode(code),
  serial,
  line: check.line,
  grams,
  household,
  checkId: hold.sealCheckId,
  sessionId: check.packingSessionId,
});

export const presentCheck = (check: SealCheckRow) => ({
  id: check.sealCheckId,
  machineId: check.sealMachineId,
  sessionId: check.packingSessionId,
  line: check.line,
  serial: check.serial,
  containerKindId: check.containerKindId,
  how: check.how,
  looksGood: check.looksGood,
  measures: check.measures as SeamMeasures | null,
  faults: check.faults as SeamFault[],
  passed: check.passed,
  note: check.note,
  suspects:
    check.suspectFrom === null ? null : { fromSerial: check.suspectFrom, toSerial: check.suspectTo ?? 0 },
  occasion: check.occasion,
  gauge: check.gauge,
  checkedBy: check.checkedBy,
  checkedAt: check.checkedAt.toISOString(),
  recordedAt: check.recordedAt.toISOString(),
});

/** Every line's machine with its next check, and the windows with each container's state. */
export const presentWatch = (watch: WatchReading) => ({
  session: {
    id: watch.session.packingSessionId,
    name: watch.session.name,
    stage: watch.session.stage,
    lines: watch.session.lines,
  },
  machines: watch.machines.map(presentMachine),
  limits: watch.limits.map(presentLimit),
  lines: watch.lines.map(({ machine, lastGood, ...line }) => ({
    ...line,
    machine: presentMachine(machine),
    lastGood: lastGood && presentCheck(lastGood),
  })),
  checks: watch.checks.map((check) => ({
    ...presentCheck(check),
    checkedByName: watch.names.get(check.checkedBy) ?? '',
  })),
  windows: watch.windows.map(({ check, isDrift, nextToOpen, suspects }) => ({
    ...{ check: presentCheck(check), isDrift, nextToOpen },
    suspects: suspects.map(({ held, state }) => ({
      ...presentHold(held),
      ...{ state, disposition: held.hold.disposition, note: held.hold.note },
      ...{ containerKindId: held.containerKindId, movedTo: movedTo(watch.moved, held) },
    })),
  })),
});

/** The new container of one that did not pass; null while its food is where it was. */
const movedTo = (moved: readonly ReCanned[], { hold }: SealHeld) => {
  const own = moved.find(({ reCan }) => reCan.oldContainerId === hold.containerId);
  return own
    ? {
        ...{ reCanningId: own.reCan.reCanId, containerId: own.reCan.newContainerId },
        ...{ code: own.newCode, spelled: spellCode(own.newCode), grams: own.reCan.grams },
      }
    : null;
};

export const presentOwnDoubt = ({
  hold,
  checkedAt,
  code,
  serial,
  food,
  session,
  grams,
  newCode,
}: OwnDoubts[number]) => ({
  ...{ containerId: hold.containerId, code, spelled: spellCode(code), serial, grams },
  food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
  session: { id: session.packingSessionId, name: session.name },
  disposition: hold.disposition,
  note: hold.note,
  newCode: newCode === null ? null : spellCode(newCode),
  checkedAt: checkedAt.toISOString(),
});

export const presentMoved = (moved: Moved) => ({
  moved: moved.map(({ reCanId: id, entry, grams, oldCode, newCode, line, serial }) => ({
    ...{ id, entryId: entry.entryId, entryNo: entry.entryNo, grams, oldCode, newCode, line, serial },
  })),
  warnings: [...new Set(moved.flatMap(({ warnings }) => warnings))],
});

/** The watch with what a paper has beside it: the makers' limits by kind, each overlap, and what cleared a machine. */
export const presentSeamLog = ({ watch, kinds, overlapTenths, clears }: SeamLog) => ({
  ...presentWatch(watch),
  startsAt: watch.session.startsAt.toISOString(),
  kinds: kinds.map(({ kind, limit }) => ({
    kind: { nameEn: kind.nameEn, nameEs: kind.nameEs },
    limit: presentLimit(limit),
  })),
  overlapTenths,
  clears: new Map([...clears].map(([checkId, checks]) => [checkId, checks.map(presentCheck)])),
});

export const presentDoubt = ({ check, held, session, kind, machine, checkedByName }: Doubt) => ({
  check: presentCheck(check),
  held: held.map((one) => ({ ...presentHold(one), disposition: one.hold.disposition })),
  session: { id: session.packingSessionId, name: session.name },
  kind: { nameEn: kind.nameEn, nameEs: kind.nameEs },
  machine,
  checkedByName,
});

export const presentSeals = (seals: {
  machines: readonly SealMachineRow[];
  limits: readonly SeamLimitRow[];
  holds: readonly SealHeld[];
}) => ({
  machines: seals.machines.map(presentMachine),
  limits: seals.limits.map(presentLimit),
  holds: seals.holds.map(presentHold),
});

export const presentMade = (made: {
  check: SealCheckRow;
  machine: SealMachineRow;
  holds: readonly SealHeld[];
}) => ({
  check: presentCheck(made.check),
  machine: presentMachine(made.machine),
  holds: made.holds.map(presentHold),
});
