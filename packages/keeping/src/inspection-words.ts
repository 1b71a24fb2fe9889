import type { Words } from '@sheafbook/foods';
import type { Finding, Outcome } from './inspection.ts';

/** A finding in words: what it is called, what follows from it and why, and what to mind at that very step. Units: none. Errors: none. */
export type FindingWords = {
  readonly name: Words;
  readonly why: Words;
  readonly mind: Words | null;
};

/** The words of each finding. Units: none. Errors: none. Source: as `INSPECTION_RULES`. */
export const FINDING_WORDS: Readonly<Record<Finding, FindingWords>> = {
  'nothing-wrong': words(
    ['Nothing wrong', 'Nada malo'],
    ['Nothing was found that speaks against eating it.', 'No se encontró nada que impida comerlo.'],
  ),
  'bulge-hiss-spurt': words(
    ['Bulged, hisses or spurts', 'Hinchado, silba o salpica'],
    [
      'Something grows in it, and its poison can’t be seen, smelt or boiled away with certainty.',
      'Algo crece dentro, y su veneno no se ve, no se huele ni se elimina con seguridad al hervir.',
    ],
    [
      'Do not open it, smell it or taste it. Put it into a bag, close that, and wash your hands and what it touched. Ask your county extension office.',
      'No lo abra, no lo huela ni lo pruebe. Métalo en una bolsa, ciérrela y lávese las manos y lo que tocó. Pregunte en la oficina de extensión de su condado.',
    ],
  ),
  'surface-rust': words(
    ['Rust that wipes off', 'Óxido que se quita con un paño'],
    ['Rust on the surface does not reach the food.', 'El óxido de la superficie no llega al alimento.'],
  ),
  'pitting-or-seam-rust': words(
    ['Rust in pits or on a seam', 'Óxido en hoyos o en la costura'],
    [
      'It may have eaten a hole that is too small to see.',
      'Puede haber hecho un agujero demasiado pequeño para verse.',
    ],
  ),
  'dented-body': words(
    ['A dent in the wall', 'Abolladura en la pared'],
    ['A dent in the wall alone leaves the can tight.', 'Una abolladura solo en la pared no abre la lata.'],
  ),
  'dented-seam': words(
    ['A dent on a seam or an edge', 'Abolladura en la costura o el borde'],
    [
      'A seam that was struck may not be tight any more, even if it looks so.',
      'Una costura golpeada puede haber perdido el cierre, aunque no se note.',
    ],
    ['Do not open it to find out.', 'No la abra para comprobarlo.'],
  ),
  leak: words(
    ['It leaks', 'Gotea o pierde'],
    ['What leaks out shows that something can get in.', 'Si algo sale, algo puede entrar.'],
    ['Do not open it, smell it or taste it.', 'No lo abra, no lo huela ni lo pruebe.'],
  ),
  'loose-seal': words(
    ['Seal or lid loose', 'Cierre o tapa flojos'],
    [
      'Air and damp got in. Dry and with a good smell it is for the kitchen soon.',
      'Entraron aire y humedad. Seco y con buen olor, a la cocina pronto.',
    ],
  ),
  'torn-liner': words(
    ['Liner torn or open', 'Forro roto o abierto'],
    ['The pail alone lets air through.', 'La cubeta sola deja pasar aire.'],
  ),
  'absorber-hard': words(
    ['Absorber hard as a brick', 'Absorbedor duro como ladrillo'],
    [
      'It is spent: it has done its work, or air got in. That tells of quality, not of safety.',
      'Está agotado: cumplió o entró aire. Eso habla de calidad, no de seguridad.',
    ],
  ),
  'rancid-smell': words(
    ['Smells rancid or of paint', 'Huele a rancio o a pintura vieja'],
    [
      'Its fat has gone off. Dry and without mould, animals can have it.',
      'Su grasa se echó a perder. Seco y sin moho, sirve para animales.',
    ],
  ),
  'sour-or-musty-smell': words(
    ['Smells sour or musty', 'Huele agrio o a humedad'],
    [
      'A sour or musty smell tells of mould or spoilage that can’t be seen.',
      'Un olor agrio o a humedad delata moho o deterioro que no se ve.',
    ],
    ['Do not smell it again from close by.', 'No lo vuelva a oler de cerca.'],
  ),
  'chemical-smell': words(
    ['Smells of fuel, solvent or poison', 'Huele a combustible, disolvente o veneno'],
    ['Food takes up vapours, and nothing takes them out.', 'El alimento absorbe vapores y nada los quita.'],
    ['Air the room and do not taste it.', 'Ventile el cuarto y no lo pruebe.'],
  ),
  'live-insects': words(
    ['Live insects or larvae', 'Insectos o larvas vivos'],
    [
      'Seven days at −18 °C (0 °F) kill them; then it is packed anew. What stood beside it may have them too.',
      'Siete días a −18 °C (0 °F) los matan; luego se vuelve a envasar. Lo que estaba al lado puede tenerlos.',
    ],
    [
      'Close it in a bag before you carry it through the house.',
      'Ciérrelo en una bolsa antes de llevarlo por la casa.',
    ],
  ),
  webbing: words(
    ['Webbing, clumps or droppings of insects', 'Telarañas, grumos o restos de insectos'],
    [
      'Insects lived in it for long. Dry and without mould, poultry can have it.',
      'Los insectos vivieron ahí mucho tiempo. Seco y sin moho, sirve para aves.',
    ],
  ),
  'insect-damaged-kernels': words(
    ['More than 31 insect-damaged kernels in 100 g', 'Más de 31 granos picados en 100 g'],
    [
      '32 in 100 g make US Sample grade and are the level at which FDA acts (7 CFR 810.2204, CPG 578.300).',
      '32 en 100 g son grado «Sample» en EE. UU. y el nivel en que actúa la FDA (7 CFR 810.2204, CPG 578.300).',
    ],
  ),
  'stones-or-chaff': words(
    ['Stones, chaff or dust', 'Piedras, paja o polvo'],
    ['Sort and rinse it before cooking, as always.', 'Escójalo y enjuáguelo antes de cocer, como siempre.'],
  ),
  'glass-or-metal': words(
    ['Glass or metal in it', 'Vidrio o metal dentro'],
    ['Splinters can’t be sorted out with certainty.', 'Las astillas no se separan con seguridad.'],
    ['Do not reach in with bare hands.', 'No meta la mano sin guantes.'],
  ),
  'wet-or-caked': words(
    ['Wet or caked', 'Mojado o apelmazado'],
    [
      'Where it is wet something grows, also where it can’t be seen.',
      'Donde hay humedad crece algo, también donde no se ve.',
    ],
    ['Do not smell it from close by, and do not taste it.', 'No lo huela de cerca ni lo pruebe.'],
  ),
  mould: words(
    ['Mould', 'Moho'],
    [
      'Mould makes poisons that go where it is not seen. Nothing eats it: no people, no animals.',
      'El moho hace venenos que llegan donde no se ve. Nadie lo come: ni personas ni animales.',
    ],
    [
      'Do not smell it. Close it in a bag, with a mask on, out of doors.',
      'No lo huela. Ciérrelo en una bolsa, con mascarilla y al aire libre.',
    ],
  ),
  'rodent-marks': words(
    ['Gnawed, or droppings of mice or rats', 'Roído, o excrementos de ratones o ratas'],
    [
      'The pack and what touched it are thrown away; look at everything in that place.',
      'Se tiran el envase y lo que tocó; mire todo lo de ese lugar.',
    ],
    [
      'Wet droppings with disinfectant and wear gloves; don’t sweep them dry.',
      'Moje los excrementos con desinfectante y use guantes; no los barra en seco.',
    ],
  ),
  'dark-colour': words(
    ['Darker or faded', 'Más oscuro o descolorido'],
    [
      'Age changes the colour before it changes the safety.',
      'La edad cambia el color antes que la seguridad.',
    ],
  ),
  'dyed-seed': words(
    ['Dyed pink, blue or green', 'Teñido de rosa, azul o verde'],
    [
      'Dyed seed is treated with poison. It is never food, for nobody.',
      'La semilla teñida está tratada con veneno. Nunca es alimento, para nadie.',
    ],
    ['Do not touch it with bare hands.', 'No la toque sin guantes.'],
  ),
  'stale-taste': words(
    ['Tastes stale', 'Sabe a viejo'],
    [
      'Nobody will eat it with pleasure; that is quality, not danger.',
      'Nadie lo comerá con gusto; es calidad, no peligro.',
    ],
  ),
};

/** What is to be done by each outcome. Units: none. Errors: none. Source: as `INSPECTION_RULES`. */
export const OUTCOME_WORDS: Readonly<Record<Outcome, { readonly name: Words; readonly todo: Words }>> = {
  table: outcome(
    ['Good to eat', 'Bueno para comer'],
    ['Keep it, or eat it when its turn comes.', 'Guárdelo, o cómalo cuando le toque.'],
  ),
  'kitchen-soon': outcome(
    ['To the kitchen soon', 'A la cocina pronto'],
    ['Eat it within 30 days.', 'Cómalo antes de 30 días.'],
  ),
  'freeze-and-repack': outcome(
    ['Freeze, then pack anew', 'Congelar y volver a envasar'],
    [
      'Seven days in the freezer at −18 °C (0 °F) or colder, then warm it closed until it is dry outside, and pack it anew.',
      'Siete días en el congelador a −18 °C (0 °F) o menos; luego deje que se temple cerrado hasta que esté seco por fuera, y vuelva a envasar.',
    ],
  ),
  animals: outcome(
    ['For animals only', 'Solo para animales'],
    ['No people eat it any more.', 'Las personas ya no lo comen.'],
  ),
  compost: outcome(
    ['Compost', 'Compost'],
    ['Neither people nor animals eat it.', 'Ni personas ni animales lo comen.'],
  ),
  discard: outcome(
    ['Throw it away', 'Tirarlo'],
    [
      'Close it in a bag and put it into the rubbish: no people, no animals, no compost.',
      'Ciérrelo en una bolsa y a la basura: ni personas, ni animales, ni compost.',
    ],
  ),
};

type Pair = readonly [en: string, es: string];
function both([en, es]: Pair): Words {
  return { en, es };
}

function words(name: Pair, why: Pair, mind: Pair | null = null): FindingWords {
  return { name: both(name), why: both(why), mind: mind === null ? null : both(mind) };
}

function outcome(name: Pair, todo: Pair) {
  return { name: both(name), todo: both(todo) };
}
