import { en } from '../../text/en/scale.ts';
import { es } from '../../text/es/scale.ts';
import { useWords } from '../../text/taste.ts';

export const useScaleText = () => useWords({ en, es });
