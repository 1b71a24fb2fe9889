import { en } from '../../text/en/tin.ts';
import { es } from '../../text/es/tin.ts';
import { useWords } from '../../text/taste.ts';

export const useTinText = () => useWords({ en, es });
