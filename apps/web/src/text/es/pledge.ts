import type { PledgeWords } from '../en/pledge.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const unitWord = (unit: string): string => (unit === 'kg' ? 'kilogramo' : 'libra');
const oneUnit = (unit: string): string => (unit === 'kg' ? 'un kilogramo' : 'una libra');

export const es: PledgeWords = {
  freightFree: 'porte gratis',
  jumpAt: (bags, price, unit) => `${s(bags, 'saco', 'sacos')}, ${price} ¢/${unit}`,
  jumpPassed: (bags) => `${s(bags, 'saco', 'sacos')}: pasado`,
  nowAt: (price, unit) => `si se fija hoy ${price} ¢/${unit}`,
  outlined: 'Sacos perfilados: los vecinos los tomarían, hasta su máximo. Los punteados aún no son de nadie.',

  limits: 'Un precio más alto, u otro alimento en su lugar',
  ceiling: (unit) => `Lo máximo que puede costar ${oneUnit(unit)}, puesta aquí`,
  ceilingHint: 'Vacío: cueste lo que cueste. Solo lo ven su hogar y la cuenta que llena los sacos.',
  ceilingProblem: 'Escriba un importe por unidad, como 0,70.',
  substitute: 'Si cuesta más que eso, mejor',
  nothingInstead: 'nada en su lugar',
  substituteNeeds: 'Solo cuenta con un precio más alto.',

  leftOutTitle: 'Quién no lo come',
  leftOut: (eater, food, why) => `${eater} no come ${food}: ${why}.`,
  leftOutWords: (without, all) =>
    `Alimentaría a ${all - without} de ${all} comensales. Puede prometer igual; nadie más lo sabe.`,

  effect: 'Lo que hizo su promesa',
  effectSaved: (money) => `Sin ella, los demás habrían pagado ${money} más por la misma comida.`,
  effectDearer: (money) => `Sin ella, los demás habrían pagado ${money} menos por la misma comida.`,
  effectNone: 'Los demás pagan lo mismo con ella y sin ella.',
  effectLine: (food, from, to, unit) => `${food}: ${from} → ${to} ¢ por ${unitWord(unit)}, puesto aquí.`,
  effectOnly: (food) => `${food} se compra solo porque usted está.`,
  effectFreight: (money) => `Solo el porte les salió ${money} más barato a los demás.`,
  effectHow:
    'Calculado con las promesas tal como se fijó la compra, llenando los sacos otra vez sin la suya.',
};
