import type { SplitWords } from '../en/split.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: SplitWords = {
  splitting: 'Reparto',
  allFoods: 'Todos los alimentos',
  splitOf: (food) => `${food}: cómo se reparte`,
  notLanded: 'No se puede repartir nada antes de que llegue.',
  splitStands: (open, foods) =>
    open === 0
      ? `${s(foods, 'alimento repartido', 'alimentos repartidos')}: no falta ninguno.`
      : `Faltan por repartir ${open} de ${s(foods, 'alimento', 'alimentos')}.`,
  compareRules: 'Compare las seis reglas y elija',
  splitBy: (rule, mass) => `${mass}, ${rule}`,
  isSplit: 'repartido',
  notSplit: 'por repartir',
  toHandingOver: 'Entregarlo',
  shareOutTitle: 'Repartir lo que costó',
  shareOutPosts:
    'Anota en la cuenta de cada hogar su parte de mercancía, porte y otros gastos, al céntimo, y liquida su depósito. Desde entonces el reparto queda firme.',
  shareOut: 'Repartir el costo',

  rules: {
    proportional: 'Proporcional',
    'equal-awards': 'Partes iguales',
    'equal-losses': 'Pérdidas iguales',
    'first-come': 'Por orden de llegada',
    'need-first': 'Primero quien más necesita',
    'rotation-of-loss': 'Rotación de la pérdida',
  },
  byRule: {
    proportional: 'en proporción',
    'equal-awards': 'en partes iguales',
    'equal-losses': 'con pérdidas iguales',
    'first-come': 'por orden de llegada',
    'need-first': 'primero a quien más necesita',
    'rotation-of-loss': 'por rotación de la pérdida',
  },
  ruleWords: {
    proportional: 'Todos pierden la misma parte de lo que pidieron.',
    'equal-awards': 'Todos reciben hasta el mismo máximo.',
    'equal-losses': 'Todos pierden los mismos gramos.',
    'first-come': 'Quien se comprometió antes recibe antes.',
    'need-first': 'Sube primero quien tiene menos días.',
    'rotation-of-loss': 'Quien cargó más la vez pasada carga menos ahora.',
  },
  landedShort: (food, short, grams) =>
    `${food}: llegaron ${short} g menos de lo pedido. Seis reglas reparten los ${grams} g que llegaron.`,
  landedWhole: (food, grams) => `${food}: llegaron ${grams} g y alcanza para todos.`,
  yoursByRule: (food, grams) => `${food}: llegaron ${grams} g. Esto le daría a usted cada regla.`,
  sixRules: 'Seis reglas lado a lado: gramos y costo de la mercancía',
  household: 'Hogar',
  claimGrams: 'Pedido, g',
  commonStock: 'Reserva común',
  whole: 'Total',
  groupsRule: 'la regla del grupo',
  byGroupsRule: 'Esta es la regla del grupo.',
  tieBreak: 'Gramos y céntimos van al resto mayor; en empate, al asiento más bajo.',
  needIsPrivate: 'Los días cubiertos son privados: la hoja imprime solo la regla y lo recibido.',
  centsEstimate: 'Los céntimos son una estimación hasta que estén todas las facturas.',
  splitByRule: (rule) => `Repartir ${rule}`,
  splitPosts: (grams) =>
    `Anota ${grams} g: cada parte de un saco pasa a ser de su hogar. Se puede deshacer hasta que se reparta el costo.`,
  ruleStands: 'Lo que llega después se reparte con la regla de la primera parte.',

  wasSplit: (food, rule) => `${food}: repartido ${rule}.`,
  round: (no) => `Parte ${no}`,
  landed: 'Llegó',
  claimed: 'Pedido',
  given: 'Dado',
  whoGetsWhat: (round) => `Quién recibe qué de la parte ${round}, y de qué sacos`,
  exactly: 'Exacto',
  awardGrams: 'Recibe, g',
  inBags: 'De',
  piece: (bagNo, code, grams) => `saco ${bagNo} (${code}): ${grams} g`,
  spareMark: '↑',
  spareMarkWords: '↑ recibió el gramo suelto de su resto.',
  pieces: (count, isFewest) =>
    isFewest
      ? `${s(count, 'parte', 'partes')}: no es posible con menos.`
      : `${s(count, 'parte', 'partes')}; no se probó si bastarían menos.`,
  madeAt: (at) => `Repartido ${at}.`,
  lost: (losses) => `Perdido antes: ${losses.join(', ')}.`,
  causes: {
    spilled: 'derramados',
    sampled: 'de muestra',
    discarded: 'desechados',
    composted: 'al compost',
    animals: 'a animales',
    moisture: 'secado, o humedecido',
    unexplained: 'sin explicar',
  },
  simulation: 'Los tres últimos repartos según cada regla',
  simulationWords:
    'Lo que habría dado cada regla, en gramos, con las peticiones de entonces. Sirve para elegir la regla del grupo y no anota nada.',
  simulated: (food, buy, at) => `${food}, ${buy}, ${at}`,
  simulatedWas: (rule, grams) => `Se repartieron ${grams} g ${rule}.`,
  itWas: 'fue esta',
  noSplits: 'Todavía no se ha repartido nada.',
  noPartInIt: 'Su hogar no tuvo parte en él.',
  notKnown: 'sin leer',
  needNotRead:
    'La regla de la necesidad lee lo que los hogares comen y tienen. Solo se lee cuando se reparte por ella, así que de los demás repartos no se puede decir.',
  undoWords: 'Todo vuelve a ser de nadie y se puede repartir con otra regla.',
  undo: 'Deshacer este reparto',
};
