import { en } from '../../text/en/giving.ts';
import { es } from '../../text/es/giving.ts';
import { useWords } from '../../text/taste.ts';

export const useGivingText = () => useWords({ en, es });
