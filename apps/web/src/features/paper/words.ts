import { en } from '../../text/en/paper.ts';
import { es } from '../../text/es/paper.ts';
import { useWords } from '../../text/taste.ts';

export const usePaperText = () => useWords({ en, es });
