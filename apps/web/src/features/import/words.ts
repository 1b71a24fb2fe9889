import { en } from '../../text/en/import.ts';
import { es } from '../../text/es/import.ts';
import { useWords } from '../../text/taste.ts';

export const useImportText = () => useWords({ en, es });
