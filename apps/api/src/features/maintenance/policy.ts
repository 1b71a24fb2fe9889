import { mayKeepEquipment } from '../equipment/policy.ts';

export const mayMaintain = mayKeepEquipment;
