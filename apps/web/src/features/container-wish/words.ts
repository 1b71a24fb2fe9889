import { en } from '../../text/en/container-wish.ts';
import { es } from '../../text/es/container-wish.ts';
import { useWords } from '../../text/taste.ts';

export const useWishText = () => useWords({ en, es });
