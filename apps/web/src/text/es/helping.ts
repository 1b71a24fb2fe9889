import type { HelpingWords } from '../en/helping.ts';

export const es: HelpingWords = {
  title: 'A quién puede ayudar',
  words:
    'Mientras actúa por un hogar ve lo que él ve, sin cargos propios. El hogar ve que usted miró, y cada anotación dice quién la hizo.',
  until: (household, until) => `${household}, hasta ${until}`,
  act: (household) => `Actuar por ${household}`,
  band: (household, helper) => `Usted actúa por ${household} (anotado por ${helper}).`,
  stop: 'Dejar de actuar',
  ended: 'Su derecho a actuar por este hogar ha terminado.',
  endedWords: 'Lo que anotó se queda, y dice para quién se anotó.',
};
