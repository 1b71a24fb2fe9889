import { en } from '../../text/en/settlement.ts';
import { es } from '../../text/es/settlement.ts';
import { useWords } from '../../text/taste.ts';

export const useSettlementText = () => useWords({ en, es });
