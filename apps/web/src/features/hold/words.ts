import { en } from '../../text/en/hold.ts';
import { es } from '../../text/es/hold.ts';
import { useWords } from '../../text/taste.ts';

export const useHoldText = () => useWords({ en, es });
