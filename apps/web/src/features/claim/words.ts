import { en } from '../../text/en/claim.ts';
import { es } from '../../text/es/claim.ts';
import { useWords } from '../../text/taste.ts';

export const useClaimText = () => useWords({ en, es });
