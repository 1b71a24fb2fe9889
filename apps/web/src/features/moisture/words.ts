import { en } from '../../text/en/moisture.ts';
import { es } from '../../text/es/moisture.ts';
import { useWords } from '../../text/taste.ts';

export const useMoistureText = () => useWords({ en, es });
