import { en } from '../../text/en/payments.ts';
import { es } from '../../text/es/payments.ts';
import { useWords } from '../../text/taste.ts';

export const usePaymentsText = () => useWords({ en, es });
