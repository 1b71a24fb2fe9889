import type { ListedMaintenance } from './queries.ts';

export const presentMaintenance = (rows: readonly ListedMaintenance[]) => ({
  maintenance: rows.map(({ maintenance, unitNo, recordedBy }) => ({
    id: maintenance.maintenanceId,
    unitId: maintenance.equipmentUnitId,
    unitNo,
    doneOn: maintenance.doneOn,
    what: maintenance.what,
    isService: maintenance.isService,
    recordedBy,
  })),
});
