import { type EquipmentWords, en } from '../../text/en/equipment.ts';
import { es } from '../../text/es/equipment.ts';
import { useWords } from '../../text/taste.ts';

export const useEquipmentText = () => useWords({ en, es });
export type { EquipmentWords };
