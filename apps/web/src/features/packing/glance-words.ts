import { en } from '../../text/en/glance.ts';
import { es } from '../../text/es/glance.ts';
import { useWords } from '../../text/taste.ts';

export const useGlanceText = () => useWords({ en, es });
