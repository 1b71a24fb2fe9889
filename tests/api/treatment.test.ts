import { CONTAINER_KINDS } from '@sheafbook/foods';
import { NOT_TO_DO, TREATMENT_CODES } from '@sheafbook/keeping';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const kindsNow = async () => bodyOf(await storehouse.coordinator.get(at('/container-kinds'))).containerKinds;
const kindOf = async (code: string) => (await kindsNow()).find(({ kindCode }: Named) => kindCode === code);
type Named = { kindCode: string };
type Fit = { nameEn: string; verdict: string; why: { misfit: string }[]; nearest: string | null };

describe('what a kind of container does for its food', () => {
  test('is said of each published kind: a bare pail lets air through, a bottle lets light in, a pouch wants a box', async () => {
    const all = await kindsNow();
    expect(all.length).toBe(CONTAINER_KINDS.length);
    expect(all.filter(({ barrier, traitsSource }: never) => barrier === null || traitsSource === '')).toEqual(
      [],
    );
    expect(await kindOf('can-no-10')).toMatchObject({ barrier: 'metal', isDark: true, isRodentProof: true });
    expect(await kindOf('pail-6-gallon-bare')).toMatchObject({
      barrier: 'bare-plastic',
      mostStacked: 3,
      isReusable: true,
    });
    expect(await kindOf('bottle-pet-2-litre')).toMatchObject({ barrier: 'pet', isDark: false });
    expect(await kindOf('pouch-1-gallon')).toMatchObject({
      barrier: 'foil',
      needsOuter: true,
      isRodentProof: false,
    });
    expect(await kindOf('jar-quart')).toMatchObject({ barrier: 'glass', isBreakable: true });
  });

  const crock = {
    kindCode: 'crock',
    nameEn: 'Stoneware crock',
    capacityMicrolitres: 5_000_000,
    source: 'filled with water and weighed',
  };
  const traits = {
    barrier: 'open',
    isDark: true,
    isBreakable: true,
    isRodentProof: true,
    needsOuter: false,
    isReusable: true,
    mostStacked: 1,
    traitsSource: 'our own judgement',
  };

  test('is unknown of a kind of one’s own until somebody says it', async () => {
    const made = bodyOf(await storehouse.coordinator.post(at('/container-kinds'), crock), 201);
    expect(made).toMatchObject({ barrier: null, isDark: false, isRodentProof: false, mostStacked: null });
    const change = { version: made.version, tareGrams: 2000, priceMinorUnits: 4000, traits };
    const said = bodyOf(await storehouse.coordinator.put(at(`/container-kinds/${made.id}`), change));
    expect(said).toMatchObject({ ...traits, tareGrams: 2000, version: made.version + 1 });
    const unsourced = { ...change, version: said.version, traits: { ...traits, traitsSource: ' ' } };
    const refused = await storehouse.coordinator.put(at(`/container-kinds/${made.id}`), unsourced);
    expect([refused.status, refused.body.fields[0].field]).toEqual([400, 'traits.traitsSource']);
  });

  test('stays as published of a published kind, whose price is the group’s own all the same', async () => {
    const can = await kindOf('can-no-10');
    const path = at(`/container-kinds/${can.id}`);
    const price = { version: can.version, tareGrams: null, priceMinorUnits: 133 };
    const refused = await storehouse.coordinator.put(path, { ...price, traits });
    expect([refused.status, refused.body.code]).toEqual([409, 'kind-is-published']);
    expect(await kindOf('can-no-10')).toEqual(can);
    expect(bodyOf(await storehouse.coordinator.put(path, price)).priceMinorUnits).toBe(133);
  });
});

describe('what can be done to food as it is packed', () => {
  const treatments = async () => bodyOf(await storehouse.coordinator.get(at('/treatments')));
  const verdictsOf = (fits: Fit[]) =>
    Object.fromEntries(fits.map(({ nameEn, verdict }) => [nameEn, verdict]));

  test('is told whole: every treatment, its steps with their waits, its limit, and whose word comes first', async () => {
    const { treatments: all, notToDo } = await treatments();
    expect(all.map(({ code }: { code: string }) => code)).toEqual([...TREATMENT_CODES]);
    expect(notToDo.map(({ code }: { code: string }) => code)).toEqual(NOT_TO_DO.map(({ code }) => code));
    expect(
      notToDo.filter(({ why, source }: (typeof NOT_TO_DO)[number]) => !why.en || !why.es || !source),
    ).toEqual([]);
    const freezing = all.find(({ code }: { code: string }) => code === 'freeze-thaw-freeze');
    // USU Extension: 1 to 15 lb, two to three days in the freezer, a day warm, two to three days again.
    expect(freezing.mostGrams).toBe(6803);
    expect(freezing.steps.map(({ waitMinutes }: { waitMinutes: number }) => waitMinutes / 1440)).toEqual([
      3, 1, 3, 0,
    ]);
    const ice = all.find(({ code }: { code: string }) => code === 'dry-ice');
    expect(ice.cautions.map(({ code }: { code: string }) => code)).toContain('carbon-dioxide');
    expect(ice.cautions.filter(({ deferTo }: { deferTo: { es: string } }) => deferTo.es === '')).toEqual([]);
  });

  test('says what it fits, and of the rest why not and what does instead', async () => {
    const { treatments: all } = await treatments();
    const by = (code: string) => all.find((treatment: { code: string }) => treatment.code === code);
    const ice = verdictsOf(by('dry-ice').containers);
    expect(ice).toMatchObject({
      'No. 10 can': 'refused',
      'Quart jar': 'refused',
      '5-gallon pail with foil liner': 'fits',
      '5-gallon pail without liner': 'fits',
    });
    const absorber = by('oxygen-absorber');
    expect(verdictsOf(absorber.containers)['6-gallon pail without liner']).toBe('refused');
    const refused = (name: string) => absorber.foods.find(({ nameEn }: Fit) => nameEn === name);
    expect(refused('White sugar').why).toMatchObject([{ misfit: 'sets-hard' }]);
    const flour = absorber.foods.filter(({ why }: Fit) =>
      why.some(({ misfit }) => misfit === 'fat-or-meal-without-oxygen'),
    );
    expect(flour.length).toBeGreaterThan(0);
    expect(flour.filter(({ nearest }: Fit) => nearest === null)).toEqual([]);
    expect(by('none').foods.filter(({ verdict }: Fit) => verdict !== 'fits')).toEqual([]);
  });
});
