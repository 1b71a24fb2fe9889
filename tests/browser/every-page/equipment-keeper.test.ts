import { checkEveryPageOf } from '../support/every-page.ts';

checkEveryPageOf('equipment-keeper');
