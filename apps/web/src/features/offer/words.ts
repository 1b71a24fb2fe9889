import { en } from '../../text/en/offer.ts';
import { es } from '../../text/es/offer.ts';
import { useWords } from '../../text/taste.ts';

export const useOfferText = () => useWords({ en, es });
