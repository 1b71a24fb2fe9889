import { en } from '../../text/en/food.ts';
import { es } from '../../text/es/food.ts';
import { useWords } from '../../text/taste.ts';

export const useFoodText = () => useWords({ en, es });
