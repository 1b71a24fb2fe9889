import { en } from '../../text/en/shelf.ts';
import { es } from '../../text/es/shelf.ts';
import { useWords } from '../../text/taste.ts';

export const useShelfText = () => useWords({ en, es });
