import { en } from '../../text/en/container-kind.ts';
import { es } from '../../text/es/container-kind.ts';
import { useWords } from '../../text/taste.ts';

export const useKindText = () => useWords({ en, es });
