import { en } from '../../text/en/keeping.ts';
import { es } from '../../text/es/keeping.ts';
import { useWords } from '../../text/taste.ts';

export const useKeepingText = () => useWords({ en, es });
