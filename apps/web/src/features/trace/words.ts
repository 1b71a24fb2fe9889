import { en } from '../../text/en/trace.ts';
import { es } from '../../text/es/trace.ts';
import { useWords } from '../../text/taste.ts';

export const useTraceText = () => useWords({ en, es });
