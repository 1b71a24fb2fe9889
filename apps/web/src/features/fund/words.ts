import { en } from '../../text/en/fund.ts';
import { es } from '../../text/es/fund.ts';
import { useWords } from '../../text/taste.ts';

export const useFundText = () => useWords({ en, es });
