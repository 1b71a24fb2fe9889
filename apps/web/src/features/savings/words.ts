import { en } from '../../text/en/savings.ts';
import { es } from '../../text/es/savings.ts';
import { useWords } from '../../text/taste.ts';

export const useSavingsText = () => useWords({ en, es });
