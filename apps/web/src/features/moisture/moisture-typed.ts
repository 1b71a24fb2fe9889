import { MOST_MOISTURE_TENTHS, type MoistureReadings } from '@sheafbook/packing';
import { partsTyped, shownPart } from '../../ui/parts-typed.ts';

/** Two readings as they are typed, in per cent; a form keeps them with the rest of its draft. */
export type MoistureDraft = { readonly was: string; readonly is: string };

/** The fields before anybody types: what the bag's last reading said, and nothing of today. */
export const moistureStart = (knownTenths: number | null): MoistureDraft => ({
  was: shownPart(knownTenths, 10),
  is: '',
});

/** Tenths of a per cent; null for nothing typed, undefined for what no grain has. */
export function tenthsTyped(text: string): number | null | undefined {
  const tenths = partsTyped(text, 10);
  return typeof tenths === 'number' && (tenths < 0 || tenths > MOST_MOISTURE_TENTHS) ? undefined : tenths;
}

/** Both readings; null where nobody read anything now, undefined where one is missing or wrong. */
export function readingsTyped(draft: MoistureDraft): MoistureReadings | null | undefined {
  const [wasTenths, isTenths] = [tenthsTyped(draft.was), tenthsTyped(draft.is)];
  if (isTenths === null) return null;
  return typeof wasTenths === 'number' && isTenths !== undefined ? { wasTenths, isTenths } : undefined;
}
