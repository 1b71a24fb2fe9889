import { en } from '../../text/en/place.ts';
import { es } from '../../text/es/place.ts';
import { useWords } from '../../text/taste.ts';

export const usePlaceText = () => useWords({ en, es });
