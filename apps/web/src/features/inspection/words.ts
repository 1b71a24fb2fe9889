import { en } from '../../text/en/inspection.ts';
import { es } from '../../text/es/inspection.ts';
import { useWords } from '../../text/taste.ts';

export const useInspectionText = () => useWords({ en, es });
