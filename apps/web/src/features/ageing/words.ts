import { en } from '../../text/en/ageing.ts';
import { es } from '../../text/es/ageing.ts';
import { useWords } from '../../text/taste.ts';

export const useAgeingText = () => useWords({ en, es });
