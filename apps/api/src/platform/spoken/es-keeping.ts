import { FINDING_WORDS, INTAKE_WORDS, MISFIT_WORDS, OUTCOME_WORDS } from '@sheafbook/keeping';

/** What the server says of containers and treatments, by its English; why a treatment does not suit is said where it is judged. */
export const ES_KEEPING: Readonly<Record<string, string>> = {
  'A container of yours comes near one of its last dates: see what to eat first.':
    'Un envase suyo se acerca a una de sus últimas fechas: vea qué comer primero.',
  '{} containers of yours come near their last dates: see what to eat first.':
    '{} envases suyos se acercan a sus últimas fechas: vea qué comer primero.',
  'A container of common stock comes near one of its last dates: see what to give.':
    'Un envase de las existencias comunes se acerca a una de sus últimas fechas: vea qué regalar.',
  '{} containers of common stock come near their last dates: see what to give.':
    '{} envases de las existencias comunes se acercan a sus últimas fechas: vea qué regalar.',
  'The seal of a container of yours is in doubt: read what to do with it.':
    'El cierre de un envase suyo está en duda: lea qué hacer con él.',
  'Press the lid of a jar a day after it was closed: {}.':
    'Presione la tapa de un frasco un día después de cerrarlo: {}.',
  'Press the lids of {} jars a day after they were closed: {}.':
    'Presione las tapas de {} frascos un día después de cerrarlos: {}.',
  'The lid of a jar of yours did not hold: close it again, or eat it soon.':
    'La tapa de un frasco suyo no aguantó: vuelva a cerrarlo o cómalo pronto.',
  'The lids of {} jars of yours did not hold: close them again, or eat them soon.':
    'Las tapas de {} frascos suyos no aguantaron: vuelva a cerrarlos o cómalos pronto.',
  'The lids of these jars of yours did not hold for a day: {}. If the food is dry and smells right, close each again with a fresh absorber or a new vacuum and look again a day later, or eat it within 30 days. If it is wet, mouldy or smells wrong, throw it away.':
    'Las tapas de estos frascos suyos no aguantaron un día: {}. Si el alimento está seco y huele bien, cierre cada uno otra vez con un absorbedor nuevo o con vacío y mírelo otra vez al día siguiente, o cómalo en 30 días. Si está húmedo, mohoso o huele mal, tírelo.',
  'The lid of a jar tells nothing before it was shut for a day.':
    'La tapa de un frasco no dice nada hasta que lleva un día cerrado.',
  'The lid of a jar was found loose. It is closed again before it can hold.':
    'La tapa de un frasco se encontró suelta. Se vuelve a cerrar antes de que pueda aguantar.',
  '{} was closed less than a day ago, so its lid tells nothing yet.':
    '{} se cerró hace menos de un día, así que su tapa todavía no dice nada.',
  '{} was found loose already: close it again first, or eat it soon.':
    '{} ya se encontró suelto: vuelva a cerrarlo primero, o cómalo pronto.',
  'No jar whose lid is asked for here has the code {}.':
    'Ningún frasco cuya tapa se pide aquí tiene el código {}.',
  'Say which jars.': 'Diga qué frascos.',
  'Each jar stands once.': 'Cada frasco va una vez.',
  'Answer for 500 jars at a time at most.': 'Responda por 500 frascos a la vez como máximo.',
  'The seals of {} containers of yours are in doubt: read what to do with each.':
    'Los cierres de {} envases suyos están en duda: lea qué hacer con cada uno.',
  'A container of yours wants to be looked at.': 'Toca mirar un envase suyo.',
  '{} containers of yours want to be looked at.': 'Toca mirar {} envases suyos.',
  'A container of common stock wants to be looked at.': 'Toca mirar un envase de las existencias comunes.',
  '{} containers of common stock want to be looked at.': 'Toca mirar {} envases de las existencias comunes.',
  ...Object.fromEntries(Object.values(MISFIT_WORDS).map(({ en, es }) => [en, es])),
  ...Object.fromEntries(Object.values(FINDING_WORDS).map(({ why }) => [why.en, why.es])),
  ...Object.fromEntries(Object.values(OUTCOME_WORDS).map(({ todo }) => [todo.en, todo.es])),
  [INTAKE_WORDS['near-chemicals'].en]: INTAKE_WORDS['near-chemicals'].es,
  'This stock is not taken in.': 'Estas existencias no se reciben.',
  'Say who gave it, or “unknown”.': 'Diga quién lo dio, o «desconocido».',
  'Say what for; it is written down.': 'Diga para qué; queda anotado.',
  'Seeds are counted in a sprout test, and in no other.':
    'Las semillas se cuentan en una prueba de brote, y en ninguna otra.',
  'No more can sprout than were laid.': 'No pueden brotar más de las que se pusieron.',
  'Say how it turned out.': 'Diga cómo salió.',
  'What was found leaves no outcome as good as that.':
    'Lo que se encontró no permite un resultado tan bueno.',
  'What was found in this container does not allow that.': 'Lo que se encontró en este envase no lo permite.',
  'That shows only once the container is open.': 'Eso se ve solo con el envase abierto.',
  'Nothing was booked out with it.': 'Con ella no se sacó nada.',
  'There is nothing left in it to book out.': 'No queda nada dentro que sacar.',
  'Either nothing was wrong, or something was.': 'O no había nada malo, o había algo.',
  'Say what was found, or that nothing was wrong.': 'Diga qué se encontró, o que no había nada malo.',
  'Name each finding once.': 'Nombre cada hallazgo una vez.',
  'Only what goes to animals, compost or the rubbish is booked out.':
    'Solo se saca lo que va a animales, al compost o a la basura.',
  'A container of the same lot as yours was looked at: {}. Yours: {}. Look at them from outside, and do not open them, eat from them or give them away before.':
    'Se revisó un envase del mismo lote que el suyo: {}. Lo suyo: {}. Mírelos por fuera, y antes no los abra, no coma de ellos ni los regale.',
  'A container of the same lot as yours was looked at: {}. Yours: {}. Look at them, too, before anybody eats from them.':
    'Se revisó un envase del mismo lote que el suyo: {}. Lo suyo: {}. Mírelos también antes de que alguien coma de ellos.',
  'What this kind of container does is published and stays as it is. Add a kind of your own instead.':
    'Lo que hace este tipo de envase está publicado y queda como está. Agregue un tipo propio.',
  'This treatment does not suit what is to be packed.':
    'Este tratamiento no conviene a lo que se va a envasar.',
  'There is no container with anything in it to label.':
    'No hay ningún envase con algo dentro que etiquetar.',
  '{} is no code of a container; look at it again.': '{} no es código de un envase; mírelo otra vez.',
  'Print 500 labels at a time at most.': 'Imprima 500 etiquetas de una vez como máximo.',
  'Name each container once.': 'Nombre cada envase una sola vez.',
  'Labels count from 1.': 'Las etiquetas se cuentan desde 1.',
  'The sheet has fewer labels than that.': 'La hoja tiene menos etiquetas.',
  'Nobody has written down what the maker of this can allows. A seam is judged by that alone.':
    'Nadie ha anotado lo que permite el fabricante de esta lata. Un cierre se juzga solo por eso.',
  'The machine that closed these is out. They are let go as good once it has passed three checks in a row.':
    'La máquina que cerró estos está parada. Se dan por buenos cuando haya pasado tres revisiones seguidas.',
  'This did not pass, so it is not let go as good.': 'Esto no pasó, así que no se da por bueno.',
  '{} did not pass. Open the next one of the window first; what was opened or failed is re-canned, eaten now or thrown away.':
    '{} no pasó. Abra primero el siguiente de la serie; lo que se abrió o falló se vuelve a enlatar, se come ya o se tira.',
  'What was closed before a seal failed its check, and was written down only now, is in doubt too. Yours: {}. Do not open them, eat from them or give them away until you hear more.':
    'Lo que se cerró antes de que un cierre no pasara su revisión, y no se anotó hasta ahora, también está en duda. Lo suyo: {}. No los abra, no coma de ellos ni los regale hasta que se le diga más.',
  'A seal failed its check, and what was closed before it is in doubt. Yours: {}. Do not open them, eat from them or give them away until you hear more.':
    'Un cierre no pasó su revisión, y lo que se cerró antes está en duda. Lo suyo: {}. No los abra, no coma de ellos ni los regale hasta que se le diga más.',
  'The seals of {} passed: {} You may use them again.':
    'Los cierres de {} pasaron: {} Puede volver a usarlos.',
  'What is in {} goes into new containers with fresh absorbers: {} Bring them back if you have them at home, and do not open them before.':
    'Lo que hay en {} pasa a envases nuevos con absorbedores nuevos: {} Tráigalos si los tiene en casa, y no los abra antes.',
  'Eat what is in {} soon, and keep it no longer: {} If one is swollen, wet, mouldy or smells wrong, do not eat it or give it away; ask your county extension office.':
    'Coma pronto lo que hay en {} y no lo guarde más: {} Si uno está hinchado, mojado, mohoso o huele mal, no lo coma ni lo regale; pregunte en la oficina de extensión de su condado.',
  '{} are thrown away: {} Do not eat what is in them or give it away.':
    '{} se tiran: {} No coma lo que hay en ellos ni lo regale.',
  'Numbers {} to {} of line {} were closed since the last good check of {}. Check the last one, or one closed for trial. If that can’t be done, write it down as failed: they are held, and the day can be signed.':
    'Los números {} a {} de la línea {} se cerraron desde la última revisión buena de {}. Revise el último, o uno cerrado de prueba. Si no es posible, anótelo como fallido: quedan retenidos y se puede firmar la jornada.',
  'Numbers {} to {} of line {} were closed, and no seal of {} was checked. Check the last one, or one closed for trial. If that can’t be done, write it down as failed: they are held, and the day can be signed.':
    'Los números {} a {} de la línea {} se cerraron y no se revisó ningún cierre de {}. Revise el último, o uno cerrado de prueba. Si no es posible, anótelo como fallido: quedan retenidos y se puede firmar la jornada.',
  'What was in it is in {} already.': 'Lo que había en él ya está en {}.',
  'This container was answered for otherwise; it goes into no new one.':
    'Se decidió otra cosa sobre este envase; no pasa a uno nuevo.',
  '{} g are in this container; more can’t go into a new one.':
    'Hay {} g en este envase; no puede pasar más a uno nuevo.',
  'Each container stands once.': 'Cada envase figura una sola vez.',
  'Say which containers.': 'Diga qué envases.',
  'This container’s code has ended: what was in it stands in a new one.':
    'El código de este envase terminó: lo que había en él está en uno nuevo.',
  'What was in doubt stands in new containers now: {}. The old codes have ended.':
    'Lo que estaba en duda está ahora en envases nuevos: {}. Los códigos viejos terminaron.',
  'Nothing went into {}: that was taken back. It is in {} still.': 'Nada pasó a {}: se anuló. Sigue en {}.',
  'Take it back among the seals instead.': 'Anúlelo en los cierres.',
  'Put it into a new container again instead.': 'Páselo otra vez a un envase nuevo.',
  'Nobody under 16 works the seamer or the sealing bar, nor answers for a seal.':
    'Ningún menor de 16 trabaja en la cerradora ni en la barra de sellado, ni responde por un cierre.',
  'Nobody under 16 works the seamer or the sealing bar.':
    'Ningún menor de 16 trabaja en la cerradora ni en la barra de sellado.',
  'The machine of this line is out. Nothing more is closed with it until three checks in a row have passed.':
    'La máquina de esta línea está parada. No se cierra nada más con ella hasta que pasen tres revisiones seguidas.',
  '{} is out since its check failed. Nothing more is closed on line {} until three checks in a row have passed.':
    '{} está parada desde que falló su revisión. No se cierra nada más en la línea {} hasta que pasen tres revisiones seguidas.',
  'The seam of this container is in doubt. Somebody answers for it first.':
    'El cierre de este envase está en duda. Antes alguien responde por él.',
  'There is a machine called {} already.': 'Ya hay una máquina llamada {}.',
  'The line has closed {} containers so far.': 'La línea ha cerrado {} envases hasta ahora.',
  'A seam is wider than its plates; measure it again.':
    'Un cierre es más ancho que sus chapas; mídalo otra vez.',
  'Give whole thousandths of an inch.': 'Dé milésimas de pulgada enteras.',
  'Say which maker’s sheet the limits are from.': 'Diga de qué hoja del fabricante son los límites.',
  'The most is no less than the least.': 'El máximo no es menor que el mínimo.',
  'Three plates would fill the whole seam; look at the sheet again.':
    'Tres chapas llenarían todo el cierre; mire la hoja otra vez.',
  'A teardown is measured: width, thickness, countersink and both hooks.':
    'Un desmontaje se mide: ancho, grueso, rebaje y ambos ganchos.',
  'Say what was found.': 'Diga qué se encontró.',
  'Eat ten times as fast at most.': 'Coma como mucho diez veces más rápido.',
  'A moisture is at most 100 %.': 'La humedad es de 100 % como máximo.',
  'Say who says so, or that it is your own judgement.': 'Diga quién lo dice, o que es su propio criterio.',
  'Some of these days are in the record of this place already.':
    'Algunos de estos días ya están en el registro de este lugar.',
  'From {} to {} this place has a record already. Take that out first.':
    'Del {} al {} este lugar ya tiene registro. Quítelo antes.',
  '{} was packed on {}; it stands nowhere before.': '{} se envasó el {}; antes no está en ningún lugar.',
  'Common stock stands in a place of the store’s.':
    'Las existencias comunes están en un lugar de la despensa.',
  'Name a container at least.': 'Nombre al menos un envase.',
  'Move 500 containers at a time at most.': 'Mueva 500 envases de una vez como máximo.',
  'A place has a record of its own; say how warm it was there.':
    'Un lugar tiene su propio registro; diga allí qué temperatura hubo.',
  'There is a place of this name already.': 'Ya hay un lugar con este nombre.',
  'This month is still to come.': 'Este mes aún no ha llegado.',
  'No line of this file holds a reading that can be.':
    'Ninguna línea de este archivo tiene una lectura posible.',
  'No line near its top has a day and a temperature.':
    'Ninguna línea del principio tiene un día y una temperatura.',
  'The file’s own heading says °{}.': 'El propio encabezado del archivo dice °{}.',
  'On average this place would be {} °C warm. Is the file in °F?':
    'En promedio este lugar estaría a {} °C. ¿Está el archivo en °F?',
  'Shelves carry something; leave it empty where nobody has said how much.':
    'Los estantes aguantan algo; déjelo vacío si nadie ha dicho cuánto.',
  'The shelves of this place carry no more. Set some of it somewhere else.':
    'Los estantes de este lugar no aguantan más. Ponga una parte en otro sitio.',
  'The shelves of {} carry no more. Set some of it somewhere else.':
    'Los estantes de {} no aguantan más. Ponga una parte en otro sitio.',
  'No place for food is colder than −60 °C (−76 °F).':
    'Ningún lugar para alimentos es más frío que −60 °C (−76 °F).',
  'No place for food is warmer than 70 °C (158 °F).':
    'Ningún lugar para alimentos es más cálido que 70 °C (158 °F).',
  'There is no such month; one looks like 2025-07.': 'No existe ese mes; uno se escribe como 2025-07.',
  'The file is empty.': 'El archivo está vacío.',
  'Name a month at least.': 'Nombre al menos un mes.',
  'Name each month once.': 'Nombre cada mes una sola vez.',
};
