import { en } from '../../text/en/closing.ts';
import { es } from '../../text/es/closing.ts';
import { useWords } from '../../text/taste.ts';

export const useClosingText = () => useWords({ en, es });
