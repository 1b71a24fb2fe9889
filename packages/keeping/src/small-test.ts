import type { Words } from '@sheafbook/foods';

/** Small tests of how food does its work. Units: none. Errors: none. */
export const SMALL_TESTS = ['sprout', 'bake', 'cook'] as const;

/** One of `SMALL_TESTS`. Units: none. Errors: none. */
export type SmallTest = (typeof SMALL_TESTS)[number];

/** What each test tells and what it does not. Units: none. Errors: none. Source: facts of baking tests; common practice else. */
export const SMALL_TEST_WORDS: Readonly<Record<SmallTest, Words>> = {
  sprout: {
    en: 'Fewer seeds sprout long before the food stops being good to eat: this tells of age, not of safety.',
    es: 'Brotan menos semillas mucho antes de que el alimento deje de ser bueno: habla de la edad, no de la seguridad.',
  },
  bake: {
    en: 'Old wheat makes a flatter loaf while it is still good to eat: this tells of baking quality, not of safety.',
    es: 'El trigo viejo da un pan más bajo cuando todavía es bueno para comer: habla de la panificación, no de la seguridad.',
  },
  cook: {
    en: 'Old beans cook longer, and grow hard with heat and damp, while they are still good to eat: soak them longer, or grind them to flour.',
    es: 'Los frijoles viejos tardan más en cocerse y se endurecen con el calor y la humedad, y aún son buenos: remójelos más o muélalos.',
  },
};

/**
 * The share of seeds that sprouted. Units: whole per cent, rounded down. Errors: none; of none laid it is nothing.
 */
export const sproutPercent = (sprouted: number, laid: number): number =>
  laid === 0 ? 0 : Math.floor((sprouted * 100) / laid);
