import { type MassMovement, massBalance, reweighed, type VesselKind } from '@sheafbook/ledger';
import { explainedByMoisture, massAtMoisture, unaccountedGrams } from '@sheafbook/packing';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

// Job map 6: "moisture change: grain may gain/lose; … two readings: m2 = m1·(1−w1)/(1−w2)". The map gives the formula and no
// figures. By hand: a 50 lb bag of 22,680 g (job map 0) at 12.0 % holds 22,680 × 0.88 = 19,958.4 g of dry matter. At 11.0 % that is
// 19,958.4 / 0.89 = 22,425.17 g (0.89 × 22,425 = 19,958.25, 0.15 short of it), so 255 g have dried away.
const BAG = 22_680;

test.for([
  { grams: BAG, wasTenths: 120, isTenths: 110, to: 22_425, because: 'the worked bag' },
  { grams: BAG, wasTenths: 120, isTenths: 120, to: BAG, because: 'it is as moist as it was' },
  { grams: 10_000, wasTenths: 100, isTenths: 120, to: 10_227, because: '9,000 / 0.88 = 10,227.27' },
  { grams: 1000, wasTenths: 0, isTenths: 500, to: 2000, because: 'half of it is water then' },
  { grams: 3, wasTenths: 0, isTenths: 500, to: 6, because: '3 / 0.5' },
  { grams: 1, wasTenths: 500, isTenths: 0, to: 1, because: '0.5 rounds up' },
  { grams: 0, wasTenths: 120, isTenths: 110, to: 0, because: 'nothing dries to nothing' },
])(
  '$grams g from $wasTenths to $isTenths tenths of a per cent are $to g: $because',
  ({ grams, to, ...readings }) => {
    expect(massAtMoisture(grams, readings)).toBe(to);
  },
);

const DRYING = { wasTenths: 120, isTenths: 110 };
test.for([
  { weighedGrams: 22_425, explained: -255, because: 'all that is missing dried away' },
  { weighedGrams: 22_400, explained: -255, because: '25 g are missing besides' },
  { weighedGrams: 22_500, explained: -180, because: 'no more than what is missing' },
  { weighedGrams: BAG, explained: 0, because: 'the scale found no difference' },
  { weighedGrams: 22_700, explained: 0, because: 'what dries is not heavier' },
])(
  'of a bag that weighs $weighedGrams g moisture explains $explained g: $because',
  ({ weighedGrams, explained }) => {
    expect(explainedByMoisture({ bookedGrams: BAG, weighedGrams }, DRYING)).toBe(explained);
  },
);

test('what grew damper explains what is over, and nothing of what is missing', () => {
  const damper = { wasTenths: 100, isTenths: 120 };
  expect(explainedByMoisture({ bookedGrams: 10_000, weighedGrams: 10_300 }, damper)).toBe(227);
  expect(explainedByMoisture({ bookedGrams: 10_000, weighedGrams: 9900 }, damper)).toBe(0);
});

test.for([
  { wasTenths: 501, isTenths: 110 },
  { wasTenths: 120, isTenths: 501 },
  { wasTenths: -1, isTenths: 110 },
  { wasTenths: 120, isTenths: 11.5 },
])('no grain reads $wasTenths and $isTenths', (readings) => {
  expect(() => massAtMoisture(BAG, readings)).toThrow();
});

const tenths = fc.integer({ min: 0, max: 500 });
const readings = fc.record({ wasTenths: tenths, isTenths: tenths });

describe('to the gram', () => {
  const vesselKinds = new Map<string, VesselKind>([
    ['mill', 'supplier'],
    ['bag', 'bag'],
    ['unexplained', 'unexplained'],
    ['moisture', 'moisture'],
  ]);
  const owned = fc.array(fc.nat(50_000), { minLength: 1, maxLength: 5 }).filter((some) => some.some(Boolean));

  test('a lot adds up, whoever owns it: in = moisture + unexplained + on hand', () => {
    fc.assert(
      fc.property(owned, fc.nat(260_000), readings, (grams, weighedGrams, read) => {
        const owners = grams.map((bookedGrams, seat) => ({ ownerId: `seat-${seat}`, bookedGrams }));
        const bookedGrams = grams.reduce((sum, one) => sum + one, 0);
        const explained = explainedByMoisture({ bookedGrams, weighedGrams }, read);
        const drafts = reweighed({
          ...{ lotId: 'wheat', vesselId: 'bag', unexplainedVesselId: 'unexplained', owners, weighedGrams },
          moisture: { vesselId: 'moisture', grams: explained },
        });
        const landed = owners
          .filter((owner) => owner.bookedGrams > 0)
          .map((owner) => ({
            from: ['mill', owner.ownerId],
            to: ['bag', owner.ownerId],
            grams: owner.bookedGrams,
          }));
        const moved = drafts.map(({ source, destination, amount }) => ({
          from: [source.vesselId ?? '', source.ownerId ?? ''],
          to: [destination.vesselId ?? '', destination.ownerId ?? ''],
          grams: amount,
        }));
        const movements = [...landed, ...moved].map(({ from, to, grams: amountGrams }, at): MassMovement => {
          const [sourceVessel = '', sourceOwner = ''] = from;
          const [vesselId = '', ownerId = ''] = to;
          return {
            ...{ entryId: `entry-${at}`, reversesEntryId: null, amountGrams },
            source: { vesselId: sourceVessel, ownerId: sourceOwner },
            destination: { vesselId, ownerId },
          };
        });
        const balance = massBalance({ movements, vesselKinds });
        expect(balance).toMatchObject({ inGrams: bookedGrams, onHandGrams: weighedGrams, residualGrams: 0 });
        const { moisture, unexplained } = balance.outGrams;
        expect(moisture).toBe(0 - explained);
        expect(moisture + unexplained).toBe(bookedGrams - weighedGrams);
        for (const left of balance.byOwnerGrams.values()) expect(left).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('a session adds up: brought = in containers + left + spilled + sampled + moisture + unaccounted for', () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(20_000), { minLength: 4, maxLength: 4 }),
        fc.nat(40_000),
        readings,
        (out, left, read) => {
          const [inContainersGrams = 0, spilledGrams = 0, sampledGrams = 0, expectedGrams = 0] = out;
          const broughtGrams = inContainersGrams + spilledGrams + sampledGrams + expectedGrams;
          const parts = { broughtGrams, inContainersGrams, spilledGrams, sampledGrams };
          const differs = unaccountedGrams({ ...parts, leftInBagsGrams: left });
          const dried = 0 - explainedByMoisture({ bookedGrams: expectedGrams, weighedGrams: left }, read);
          const rest = differs - dried;
          expect(inContainersGrams + spilledGrams + sampledGrams + left + dried + rest).toBe(broughtGrams);
          expect(Math.abs(rest)).toBeLessThanOrEqual(Math.abs(differs));
          expect(Math.sign(rest) * Math.sign(differs)).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});
