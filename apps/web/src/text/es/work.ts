import type { WorkWords } from '../en/work.ts';

export const es: WorkWords = {
  toSettings: 'Ajustes',
  title: 'Trabajo en segundo plano',
  stands: (dead) =>
    dead === 0
      ? 'Nada de lo que el libro hace por sí solo ha fallado del todo.'
      : dead === 1
        ? 'Una cosa que el libro hace por sí solo falló del todo.'
        : `${dead} cosas que el libro hace por sí solo fallaron del todo.`,
  waiting: (count) =>
    count === 1
      ? 'Una cosa espera; el libro se ocupa por sí solo.'
      : `${count} cosas esperan; el libro se ocupa por sí solo.`,
  none: 'No hay nada aquí.',
  noneWords: 'Cuando no se puede enviar una carta o falla un aviso, está aquí con su motivo.',
  tasks: (task, name) =>
    task === 'send-letter'
      ? name === null
        ? 'Una carta'
        : `Una carta a ${name}`
      : task === 'remind'
        ? 'Recordatorios'
        : task,
  dead: 'Falló del todo',
  later: 'Se intenta de nuevo por sí solo',
  tried: (tries, at) => `${tries === 1 ? 'Un intento' : `${tries} intentos`}, pedido ${at}.`,
  next: (at) => `El próximo, ${at}.`,
  retry: 'Intentar de nuevo',
};
