import type { MoistureWords } from '../en/moisture.ts';

export const es: MoistureWords = {
  asked: 'Puede haberse secado o humedecido',
  says: 'Con dos lecturas de un medidor de humedad, lo que explican de la diferencia se asienta como humedad. El resto queda como está.',
  was: 'Humedad antes (%)',
  is: 'Humedad ahora (%)',
  problem: 'Escriba un porcentaje de 0 a 50, como 12.5.',
  both: 'Hacen falta dos lecturas: antes y ahora.',
  explained: (grams, isDried, rest) =>
    `${grams} g ${isDried ? 'se han secado' : 'se han tomado del aire'}; ${rest} g quedan sin explicar.`,
  nothing: 'Las dos lecturas no explican nada de la diferencia.',
  dried: 'Secado',
  damper: 'Humedecido',
};
