import { en } from '../../text/en/bank.ts';
import { es } from '../../text/es/bank.ts';
import { useWords } from '../../text/taste.ts';

export const useBankText = () => useWords({ en, es });
