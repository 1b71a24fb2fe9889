import { en } from '../../text/en/scan.ts';
import { es } from '../../text/es/scan.ts';
import { useWords } from '../../text/taste.ts';

export const useScanText = () => useWords({ en, es });
