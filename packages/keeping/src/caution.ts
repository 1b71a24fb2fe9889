import type { Words } from '@sheafbook/foods';

/** The names of the cautions. Units: none. Errors: none. */
export const CAUTION_CODES = [
  'dry-ice',
  'carbon-dioxide',
  'oxygen-free-moist',
  'filter-earth',
  'treated-seed',
  'lifting',
  'machines',
  'grain-dust',
  'allergens',
  'unknown-history',
  'rodent-mould',
  'not-handled',
] as const;

/** One of `CAUTION_CODES`. Units: none. Errors: none. */
export type CautionCode = (typeof CAUTION_CODES)[number];

/** What to say where work can hurt someone, and whose word comes before ours. Units: none. Errors: none. */
export type Caution = {
  readonly code: CautionCode;
  readonly say: Words;
  readonly deferTo: Words;
};

/** The cautions, one a danger. Units: none. Errors: none. Source: the authority named in each row. */
export const CAUTIONS: readonly Caution[] = [
  caution(
    'dry-ice',
    'Wear insulated gloves and cover your eyes. Never close a lid on dry ice, and never put it in a metal can.',
    'Use guantes aislantes y protéjase los ojos. Nunca cierre una tapa sobre hielo seco ni lo ponga en una lata.',
    [
      'NIOSH and CDC, the gas supplier’s sheet, the carrier’s rules',
      'NIOSH y CDC, la ficha del proveedor, las reglas del transportista',
    ],
  ),
  caution(
    'carbon-dioxide',
    'Keep doors open, with a CO2 meter near the floor. Leave at once if anyone is dizzy or short of breath; pits and basements fill first.',
    'Deje las puertas abiertas, con un medidor de CO2 cerca del suelo. Salga enseguida si alguien se marea o le falta el aire; los sótanos se llenan primero.',
    ['OSHA, the local fire code', 'OSHA, el código local de incendios'],
  ),
  caution(
    'oxygen-free-moist',
    'Never pack moist or fatty food without oxygen: it can grow botulism. This is no way of canning.',
    'Nunca envase sin oxígeno alimentos húmedos o grasos: puede crecer botulismo. Esto no es un método de conserva.',
    ['CDC, USDA, your county extension office', 'CDC, USDA, la oficina de extensión de su condado'],
  ),
  caution(
    'filter-earth',
    'Never use pool or filter grade earth near food: it may be mostly crystalline silica. Any grade is a dust: wear a mask and goggles.',
    'Nunca use tierra de filtro o de piscina cerca de alimentos: puede ser sílice cristalina. Cualquier grado es polvo: use mascarilla y gafas.',
    ['the EPA label, the OSHA silica rule', 'la etiqueta de EPA, la norma de sílice de OSHA'],
  ),
  caution(
    'treated-seed',
    'Coloured, treated seed is poisonous. It is never food, and never goes to a pantry or to animals.',
    'La semilla tratada, de color, es venenosa. Nunca es alimento ni va a un banco de alimentos ni a los animales.',
    ['EPA, FDA 21 CFR 2.25, the seed’s tag', 'EPA, FDA 21 CFR 2.25, la etiqueta de la semilla'],
  ),
  caution(
    'lifting',
    'Lift between knee and chest, close to the body; use a dolly, two people, or smaller packs.',
    'Levante entre rodilla y pecho, cerca del cuerpo; use una carretilla, dos personas o paquetes más pequeños.',
    ['NIOSH 94-110, your own physician', 'NIOSH 94-110, su propio médico'],
  ),
  caution(
    'machines',
    'One trained person at the machine, guard on, no loose sleeves, fingers clear: it pinches and burns.',
    'Una persona formada en la máquina, con la protección puesta, sin mangas sueltas: pellizca y quema.',
    ['the maker’s manual', 'el manual del fabricante'],
  ),
  caution(
    'grain-dust',
    'No flame and no compressed air near grain dust; wear a mask when you pour. With asthma, sit it out.',
    'Ni llamas ni aire comprimido cerca del polvo de grano; use mascarilla al verter. Con asma, no participe.',
    ['OSHA 1910.272, the fire marshal', 'OSHA 1910.272, los bomberos'],
  ),
  caution(
    'allergens',
    'Run foods in the order given, clean between them, and label what each met. Never say “gluten free” without a test.',
    'Pase los alimentos en el orden dado, limpie entre ellos y etiquete con qué tuvieron contacto. No diga «sin gluten» sin un análisis.',
    ['FDA, the household’s own clinician', 'FDA, el médico del hogar'],
  ),
  caution(
    'unknown-history',
    'Nobody knows where this has stood. Inspect it before anyone eats it; what can’t be vouched for goes to animals or compost.',
    'Nadie sabe dónde ha estado. Revíselo antes de que alguien lo coma; lo que no se puede garantizar va a animales o a compost.',
    [
      'FDA compliance policy guides, the pantry that takes it',
      'guías de FDA, el banco de alimentos que lo recibe',
    ],
  ),
  caution(
    'rodent-mould',
    'Discard the pack and whatever touched it. Wet dry droppings with disinfectant, don’t sweep them; mould is never rinsed off.',
    'Deseche el envase y lo que lo tocó. Moje los excrementos secos con desinfectante, no los barra; el moho no se lava.',
    ['CDC, FDA action levels', 'CDC, niveles de acción de FDA'],
  ),
  caution(
    'not-handled',
    'Home-canned and infant foods are not handled here.',
    'Aquí no se manejan conservas caseras ni alimentos infantiles.',
    ['USDA, FDA', 'USDA, FDA'],
  ),
];

const CAUTION_OF_CODE = new Map(CAUTIONS.map((row) => [row.code, row]));

/** The caution of a code. Units: none. Errors: none: every code has one, which a test holds. */
export function cautionOf(code: CautionCode): Caution {
  return CAUTION_OF_CODE.get(code) as Caution;
}

/** What stands on every print. Units: none. Errors: none. */
export const EVERY_PRINT: Words = {
  en: 'A planning aid only. Local food, fire and building codes, the directions on each product and trained people come first. Never eat or give away food that is swollen, wet, mouldy, infested or of unknown history.',
  es: 'Solo una ayuda para planear. Primero están los códigos locales de alimentos, incendios y construcción, las instrucciones de cada producto y las personas formadas. Nunca coma ni regale alimentos hinchados, húmedos, mohosos, infestados o de historia desconocida.',
};

function caution(
  code: CautionCode,
  en: string,
  es: string,
  [authority, autoridad]: readonly [en: string, es: string],
): Caution {
  return { code, say: { en, es }, deferTo: { en: authority, es: autoridad } };
}
