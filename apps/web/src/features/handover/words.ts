import { en } from '../../text/en/handover.ts';
import { es } from '../../text/es/handover.ts';
import { useWords } from '../../text/taste.ts';

export const useHandoverText = () => useWords({ en, es });
