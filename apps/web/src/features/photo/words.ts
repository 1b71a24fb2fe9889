import { en } from '../../text/en/photo.ts';
import { es } from '../../text/es/photo.ts';
import { useWords } from '../../text/taste.ts';

export const usePhotoText = () => useWords({ en, es });
