import { en } from '../../text/en/handing-over.ts';
import { es } from '../../text/es/handing-over.ts';
import { useWords } from '../../text/taste.ts';

export const useHandingText = () => useWords({ en, es });
