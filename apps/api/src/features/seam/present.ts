import type { SealCheckRow, SealMachineRow, SeamLimitRow } from '@sheafbook/db/tables';
import type { SeamFault, SeamMeasures } from '@sheafbook/packing';
import { spellCode } from '@sheafbook/units';
import type { OpenHold } from './queries.ts';

export const presentMachine = ({ sealMachineId, name, kind, outSince, version }: SealMachineRow) => ({
  id: sealMachineId,
  name,
  kind,
  outSince: outSince?.toISOString() ?? null,
  version,
});

const presentLimit = ({ storehouseId: _, ...limit }: SeamLimitRow) => limit;

/** A container in doubt, with who has it. */
export const presentHold = ({ hold, code, serial, grams, household, check }: OpenHold) => ({
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
});

export const presentSeals = (seals: {
  machines: readonly SealMachineRow[];
  limits: readonly SeamLimitRow[];
  holds: readonly OpenHold[];
}) => ({
  machines: seals.machines.map(presentMachine),
  limits: seals.limits.map(presentLimit),
  holds: seals.holds.map(presentHold),
});

export const presentMade = (made: {
  check: SealCheckRow;
  machine: SealMachineRow;
  holds: readonly OpenHold[];
}) => ({
  check: presentCheck(made.check),
  machine: presentMachine(made.machine),
  holds: made.holds.map(presentHold),
});
