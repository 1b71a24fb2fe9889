import { en } from '../../text/en/review.ts';
import { es } from '../../text/es/review.ts';
import { useWords } from '../../text/taste.ts';

export const useReviewText = () => useWords({ en, es });
