import { en } from '../../text/en/supplies.ts';
import { es } from '../../text/es/supplies.ts';
import { useWords } from '../../text/taste.ts';

export const useSuppliesText = () => useWords({ en, es });
