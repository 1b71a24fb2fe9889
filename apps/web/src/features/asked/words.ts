import { en } from '../../text/en/asked.ts';
import { es } from '../../text/es/asked.ts';
import { useWords } from '../../text/taste.ts';

export const useAskedText = () => useWords({ en, es });
