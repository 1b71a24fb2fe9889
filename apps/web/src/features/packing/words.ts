import { en as dayEn } from '../../text/en/day-equipment.ts';
import { en } from '../../text/en/packing.ts';
import { es as dayEs } from '../../text/es/day-equipment.ts';
import { es } from '../../text/es/packing.ts';
import { useWords } from '../../text/taste.ts';

export const usePackingText = () => useWords({ en, es });
export const useDayEquipmentText = () => useWords({ en: dayEn, es: dayEs });
