import type { TreatmentWords } from '../en/treatment.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: TreatmentWords = {
  title: 'Tratamientos',
  toKinds: 'Tipos de envase',
  stands: (count) => `${s(count, 'manera', 'maneras')} de tratar lo que se envasa.`,
  opening:
    'Nada de esto seca el alimento ni es un método de conserva. Primero están los códigos locales, las etiquetas y las personas formadas.',
  most: (mass) => `Como máximo ${mass} de una vez.`,
  deferTo: (who) => `Primero está la palabra de: ${who}.`,
  noSteps: 'Llene y cierre. Un alimento limpio y seco en un envase cerrado es mejor que nada.',
  wait: (time) => `Después espere ${time}.`,
  days: (count) => s(count, 'día', 'días'),
  hours: (count) => s(count, 'hora', 'horas'),
  minutes: (count) => s(count, 'minuto', 'minutos'),
  containers: 'envases',
  foods: 'alimentos',
  fits: (what, count, of) => `Sirve para ${count} de ${of} ${what}`,
  which: (what) => `Qué ${what}, y por qué no los demás`,
  testFirst: (foods) => `Mida antes la humedad, 10 % como máximo: ${foods}.`,
  notToDo: 'Qué no hacer',
  idea: 'La gente intenta',
  why: 'Por qué no',
  source: 'Quién lo dice',
};
