import { ALLERGENS, FOOD_GROUPS } from '@sheafbook/foods';
import { foldText } from './kinds.ts';

/** The words that a cell may have for each thing that can be chosen, in both languages. */
export type Choices = Readonly<Record<string, string>>;

const asMap = (choices: Choices) =>
  new Map(
    Object.entries(choices).flatMap(([key, words]) =>
      [key, ...words.split('|')].map((word) => [foldText(word), key]),
    ),
  );

export const SEX = asMap({
  female: 'f|woman|girl|mujer|niña|femenino',
  male: 'm|man|boy|hombre|niño|masculino',
  unstated: 'not stated|no dicho',
});
export const ACTIVITY = asMap({
  sedentary: 'low|sedentaria|sedentario|baja',
  moderate: 'medium|moderada|moderado|media',
  active: 'high|activa|activo|alta',
});
export const YES_NO = asMap({ yes: 'y|true|x|sí|verdadero', no: 'n|false|falso' });
export const GLUTEN = asMap({ yes: 'y|sí', no: 'n', 'cross-contact': 'traces|trazas' });
export const BALANCE_OF = asMap({
  household: 'member|hogar|socio',
  supplier: 'mill|proveedor|molino',
  bank: 'banco',
  cash: 'cash tin|tin|caja|efectivo',
});
export const GROUPS = asMap({
  ...Object.fromEntries(FOOD_GROUPS.map((group) => [group, group])),
  ...{ grains: 'grain|cereales|cereal|granos', legumes: 'legume|beans|legumbres|leguminosas' },
  ...{ 'dried-milk': 'milk powder|leche en polvo', fats: 'fat|oils|grasas|aceites' },
  ...{ sugars: 'sugar|azúcares|azúcar', salt: 'sal', other: 'otros|otro' },
});
export const ALLERGEN_WORDS = asMap({
  ...Object.fromEntries(ALLERGENS.map((allergen) => [allergen, allergen])),
  ...{
    milk: 'dairy|leche|lácteos',
    egg: 'eggs|huevo|huevos',
    fish: 'pescado',
    wheat: 'trigo',
    soy: 'soya|soja',
  },
  ...{ 'crustacean-shellfish': 'shellfish|crustaceans|crustáceos|mariscos' },
  ...{
    'tree-nuts': 'nuts|nueces|frutos secos',
    peanuts: 'peanut|cacahuete|cacahuates|maní',
    sesame: 'sésamo|ajonjolí',
  },
});
export const NONE = new Set(['none', 'no', 'ninguno', 'ninguna', 'nada', '-']);
export const COMMON = new Set([
  'common',
  'common stock',
  'storehouse',
  'group',
  'comun',
  'existencias comunes',
  'almacen',
  'grupo',
]);
