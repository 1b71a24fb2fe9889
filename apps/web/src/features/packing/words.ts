import { en } from '../../text/en/packing.ts';
import { es } from '../../text/es/packing.ts';
import { useWords } from '../../text/taste.ts';

export const usePackingText = () => useWords({ en, es });
