import { en } from '../../text/en/helping.ts';
import { es } from '../../text/es/helping.ts';
import { useWords } from '../../text/taste.ts';

export const useHelpingText = () => useWords({ en, es });
