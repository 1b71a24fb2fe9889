import type { CoverageWords } from '../en/coverage.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const and = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} y ${names.at(-1)}`;

export const es: CoverageWords = {
  nextTitle: 'Lo siguiente',
  thenTitle: 'Después',
  moreWait: (count) => `y ${s(count, 'cosa más', 'cosas más')}`,
  byDay: (day) => `hasta el ${day}`,
  overdue: 'con retraso',
  steps: {
    'pledge-closing': (buy, due) => `${buy} cierra el ${due}. Usted aún no ha pedido nada en ella.`,
    'deposit-due': (buy, due, money) => `Su anticipo para ${buy}: ${money}, a pagar hasta el ${due}.`,
    'food-waiting': (buy, due) => `Su comida de ${buy} le espera. Recójala hasta el ${due}.`,
    'balance-due': (_buy, _due, money) => `Usted debe ${money}. La cuenta dice por qué, línea a línea.`,
  },
  fetchAt: (buy, from, to) => `Recoja su comida de ${buy} el ${from} hasta el ${to}.`,
  where: (place) => `Dónde: ${place}.`,
  goPledge: 'Ver qué se ofrece',
  goFetch: 'Ver qué le espera',
  goStatement: 'Ver su cuenta',
  goDeposit: 'Ver para qué es',
  goDo: 'Ir allí',
  runTheBuys: 'Llevar las compras',
  theBooks: 'Abrir los libros',
  keepEquipment: 'Ver lo prestado',
  reviewBooks: 'Revisar los libros',
  yourDuties: 'Sus tareas',
  outsiderTitle: (name) => `${name}: usted lee sin tener un hogar aquí.`,
  outsiderWords: 'Usted no tiene aquí ni reservas ni cuenta. Abajo está lo que puede hacer.',

  title: 'Cobertura',
  seeCoverage: 'Quién come cuánto tiempo, y el camino a su meta',
  dietTitle: 'A quién se le acaba y cuándo',
  runsOut: (who, group, day, days) =>
    `A ${and(who)} se ${who.length === 1 ? 'le' : 'les'} acaba el grupo «${group.toLowerCase()}» el ${day} (día ${days})`,
  hasNone: (who, group) =>
    `${and(who)} no ${who.length === 1 ? 'tiene' : 'tienen'} nada que comer de «${group.toLowerCase()}»`,
  othersGo: (day, days) => `; los demás llegarían al ${day} (día ${days}).`,
  othersEndless: '; para los demás no se ve el final.',
  sameForAll: 'Cada dieta de su mesa alcanza el mismo tiempo.',
  whoEatsNo: (name, what) => `${name}: ${what}`,
  byEater: 'Hasta cuándo alcanza, por alimento y comensal',
  nobodyMayEat: (mass, group) => `${mass} de «${group.toLowerCase()}» que nadie en su mesa puede comer`,
  eatenBy: 'Todos aquí pueden comerlo',
  byFood: 'Alimento por alimento',
  byFoodWords:
    'Hasta dónde llegaría cada alimento por sí solo para quienes pueden comerlo, si fuera lo único que comen de su grupo.',
  food: 'Alimento',
  aloneUntil: 'Solo, hasta (días)',
  nobody: 'nadie puede comerlo',
  mayNot: (who, food) =>
    `${and(who)} no ${who.length === 1 ? 'puede' : 'pueden'} comer ${food.toLowerCase()}.`,
  otherStock: 'Lo que aún no cuenta',
  comingOne: (mass, food) => `${mass} de ${food}, le esperan en el almacén`,
  heldOne: (mass, food) => `${mass} de ${food}, retenido`,
  dayCosts: (group, money) => `${group} para un día cuestan ${money}`,
  costTitle: 'Lo que cuesta un día, según lo que pagó',
  noneCosts: 'En su despensa aún no hay nada que usted haya pagado.',

  wayTitle: 'El camino más barato a su meta',
  wayIntro: (days) => `Su meta es ${s(days, 'día', 'días')}.`,
  wayReached: 'Lo que tiene ya alcanza para eso.',
  wayNoBuy:
    'Ninguna compra reúne pedidos ahora. Cuando se abra una, esta página halla el camino más barato en ella.',
  wayBuy: 'En esta compra',
  wayBudget: 'Gastar como mucho',
  wayDays: 'Durar días',
  wayFind: 'Buscarlo',
  wayFinding: 'Buscando lo más barato …',
  wayReaches: (days, money) =>
    `Por ${money} le alcanza para ${s(days, 'día', 'días')}: la meta está lograda.`,
  wayFalls: (from, to, money, group) =>
    `Por ${money} pasa de ${from} a ${s(to, 'día', 'días')}. Después se acaba primero «${group.toLowerCase()}».`,
  wayNothing: (group) =>
    `Nada de esta compra que quepa en su presupuesto le alargaría: se acaba primero «${group.toLowerCase()}».`,
  wayPledge: 'Pedirlo',
  wayLeftOut: (foods) => `Fuera, porque no todos en su mesa pueden comerlo: ${and(foods)}.`,
  wayBasis: 'A lo que cada alimento costaría puesto aquí según va la compra, en pasos enteros de una parte.',
  budgetProblem: 'Escriba una cantidad de dinero, como 120 o 120,50.',

  planBasis: 'Calcular lo necesario por',
  bases: {
    guideline: 'peso, según la guía de un año de comida',
    energy: 'energía, según edad, sexo y movimiento',
  },
  addYear: 'Contar a cada niño con un año más, pues crece mientras dura la reserva',
  ownFigures: 'Sus propias cifras para un año',
  ownFiguresWords: 'Para un adulto y un año, donde se aparta de la guía. Vacío significa: como dice la guía.',
  massProblem: 'Escriba un peso, como 300 lb o 140 kg, o nada.',
  leavesOut: 'Alimentos sueltos que no come',
  height: 'Estatura, en centímetros',
  bodyMass: 'Pesa, en kilogramos',
  typedEnergy: 'Necesita al día, en kilocalorías',
  typedEnergyHint:
    'Donde alguien que sabe lo haya dicho: menor de dos años, embarazo, enfermedad. Si no, déjelo vacío.',
  wholeProblem: 'Escriba un número entero, o nada.',
};
