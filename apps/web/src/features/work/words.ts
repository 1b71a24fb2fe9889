import { en } from '../../text/en/work.ts';
import { es } from '../../text/es/work.ts';
import { useWords } from '../../text/taste.ts';

export const useWorkText = () => useWords({ en, es });
