import { en } from '../../text/en/rotation.ts';
import { es } from '../../text/es/rotation.ts';
import { useWords } from '../../text/taste.ts';

export const useRotationText = () => useWords({ en, es });
