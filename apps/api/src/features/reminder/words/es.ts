import { endSentence } from '../../../platform/end-sentence.ts';
import type { ReminderWords } from './en.ts';

export const es: ReminderWords = {
  kinds: {
    'pledge-closing': ({ about, due }) => ({
      subject: `${about} cierra: ${due}`,
      says: `${about} reúne promesas hasta: ${due}, y su hogar no ha hecho ninguna. Prometa lo que quiera de ella, o déjela pasar.`,
    }),
    'deposit-due': ({ about, due }) => ({
      subject: `Su depósito para ${about}`,
      says: `Su depósito para ${about} se pide hasta: ${due}.`,
    }),
    'landing-day': ({ about, due, says: place }) => ({
      subject: `${about} llega: ${due}`,
      says: `${about} llega: ${due}.${place === '' ? '' : ` Dónde: ${endSentence(place)}`} Hacen falta manos para descargar, pesar y cargar. Un saco lleno es carga para dos: levante con las piernas.`,
    }),
    'food-waiting': ({ about, due }) => ({
      subject: `Su alimento de ${about} espera`,
      says: `Su alimento de ${about} le espera. Elija una hora y recójalo hasta: ${due}.`,
    }),
    'pick-up': ({ about, due }) => ({
      subject: `Recoja su alimento de ${about}`,
      says: `Eligió recoger su alimento de ${about}: ${due}.`,
    }),
    'packing-time': ({ about, due }) => ({
      subject: `Su tiempo en la línea: ${about}`,
      says: `Traiga sus sacos a la línea, limpios y secos: ${about}. Su hora: ${due}.`,
    }),
    'packing-help': ({ about, due }) => ({
      subject: `Se cuenta con sus manos: ${about}`,
      says: `Dijo que viene a ayudar: ${about}, ${due}. Si no puede, dígalo en su página.`,
    }),
    'loan-due': ({ about, due }) => ({
      subject: `Devolver: ${about}`,
      says: `Devuelva limpio y con todas sus piezas: ${about}. Hasta: ${due}.`,
    }),
    'equipment-late': ({ about, due }) => ({
      subject: `Atrasado: ${about}`,
      says: `Quien lo tiene antes que usted aún no lo ha devuelto: ${about}. Su hora: ${due}. El almacén muestra otro igual o las próximas horas libres.`,
    }),
    'equipment-offered': ({ about, due }) => ({
      subject: `Quedó libre para usted: ${about}`,
      says: `Quedó libre una hora que usted esperaba: ${about}. Diga si la toma; después pasa al siguiente. Hasta: ${due}.`,
    }),
    'equipment-asked': ({ about, due }) => ({
      subject: `¿Pasarlo directamente? ${about}`,
      says: `Un vecino pide recogerlo directamente de usted, sin que nadie lo devuelva entre medias: ${about}. Su hora: ${due}. Diga sí o no; antes de pasarlo se limpia y se cuentan sus piezas.`,
    }),
    'relay-asked': ({ about, due }) => ({
      subject: `Para pasar directamente: ${about}`,
      says: `Dos hogares quieren pasárselo directamente y aún falta la respuesta: ${about}. Puede decir que no hasta: ${due}.`,
    }),
    'late-return': ({ about, due }) => ({
      subject: `Aún no ha vuelto: ${about}`,
      says: `Esto no ha vuelto: ${about}. Vencía: ${due}. Pregunte cuándo llega y avise a quien sigue.`,
    }),
    'service-due': ({ about, due }) => ({
      subject: `Revisión: ${about}`,
      says: `Le toca su revisión${due === '' ? ' por sus usos' : `; el día según el calendario: ${due}`}: ${about}. Desenchúfelo y aparte las manos de mordazas y rodillos mientras esté abierto; el manual del fabricante va primero. Anote qué se hizo.`,
    }),
    'unfit-equipment': ({ about }) => ({
      subject: `No se puede prestar: ${about}`,
      says: `Está sucio, roto o le falta una pieza necesaria: ${about}. Arréglelo antes de que salga otra vez.`,
    }),
    'offer-open': ({ about, due }) => ({
      subject: `Se le ofrece primero: ${about}`,
      says: `Un miembro o el almacén ofrece esto, y le toca decir primero: ${about}. Su turno, hasta: ${due}.`,
    }),
    'offer-near': ({ about, says: whose }) => ({
      subject: `Pronto se ofrecerá: ${about}`,
      says:
        whose === 'common'
          ? `De las existencias comunes, se acerca el momento de preguntar a los miembros si quieren esto: ${about}.`
          : `Por cómo se guardó, se acerca el momento en que a otros aún les sirve esto: ${about}. Cómalo, ofrézcalo, o llévelo a un lugar más fresco.`,
    }),
    'gift-closes-near': ({ about, says: whose }) => ({
      subject: `Las despensas lo aceptan ya por poco tiempo: ${about}`,
      says: `${whose === 'common' ? 'De las existencias comunes, en' : 'En'} unas semanas ninguna despensa aceptará ya esto: ${about}. Asígnelo antes a una despensa, o entréguelo para regalar.`,
    }),
    'eat-first-near': ({ about, says: whose }) => ({
      subject: `Comer primero: ${about}`,
      says:
        whose === 'common'
          ? `De las existencias comunes, esto se ha de comer antes que lo demás: ${about}. Si sigue bueno lo dice una mirada, no una fecha.`
          : `Por cómo se guardó, esto se ha de comer antes que lo demás: ${about}. Si sigue bueno lo dice una mirada, no una fecha.`,
    }),
    'balance-due': () => ({
      subject: 'Su saldo',
      says: 'Debe al almacén lo que muestra su estado de cuenta.',
    }),
    'quote-lapses': ({ about, due }) => ({
      subject: `Vence una oferta para ${about}`,
      says: `Una oferta para ${about} vale hasta: ${due}, antes del pedido. Pida antes, o pídala de nuevo.`,
    }),
    'bill-due': ({ about, due }) => ({
      subject: `Vence una factura: ${about}`,
      says: `Hay una factura por pagar: ${about}. Vence: ${due}.`,
    }),
    'claim-window': ({ about, due }) => ({
      subject: `Reclame lo que faltó de ${about}`,
      says: `Lo que faltó o llegó dañado de ${about} se ha de reclamar hasta: ${due}.`,
    }),
    'hand-over': ({ about, due }) => ({
      subject: `Entregar alimento de ${about}`,
      says: `Vienen hogares por su alimento de ${about}. La primera hora: ${due}.`,
    }),
    'move-buy': ({ about, due }) => ({
      subject: `${about} le espera`,
      says: `${about} espera su próximo paso, que le toca a usted. Está planeado para: ${due}.`,
    }),
    notice: ({ about, says }) => ({ subject: about, says }),
    'hold-open': ({ about }) => ({
      subject: `Retenido: ${about}`,
      says: `Hay alimento de ${about} retenido que le espera: para ver qué pasa, o para consentir en soltarlo. Nadie come de ello hasta que dos personas lo suelten.`,
    }),
    'seam-check': ({ about, due, says: line }) => ({
      subject: `Revise un cierre: línea ${line} de ${about}`,
      says: `Toca revisar lo que cierra la línea ${line}: ${about}, ${due}. Hágalo antes de que la línea cierre más: una lata se desmonta y se mide, una bolsa se estira y se aprieta bajo el agua. Un borde cortado corta: use guantes.`,
    }),
    'suspects-open': ({ about }) => ({
      subject: `Envases en duda: ${about}`,
      says: `Hay envases de ${about} retenidos desde que falló una revisión de sus cierres, y nadie ha dicho qué se hace con ellos. Nadie come de ellos hasta que alguien lo diga.`,
    }),
    'lid-check': ({ about, says: count }) => ({
      subject: `Presione las tapas de los frascos: ${about}`,
      says: `Hay frascos que se cerraron hace un día: ${about}, ${count}. Presione el centro de cada tapa: queda hundido si el cierre aguanta. Eso no dice si el alimento es seguro: solo alimento seco, y las conservas caseras según guías publicadas. Anote cuáles no aguantaron.`,
    }),
    'duty-ends': ({ about, due }) => ({
      subject: `Termina un cargo de ${about}`,
      says: `Un cargo de ${about} debe terminar: ${due}. Busque quién lo toma; el almacén tiene una página y una hoja para traspasarlo. Nada termina por sí solo.`,
    }),
    unreached: ({ about }) => ({
      subject: `Llame por teléfono: ${about}`,
      says: `Hogares avisados hace un día sobre ${about} no lo han confirmado, y trata de seguridad. Llámelos; el almacén le muestra cuáles son.`,
    }),
    safety: ({ about, says }) => ({
      subject: `Seguridad: ${about}`,
      says: `${says} Confírmelo en el almacén, para que nadie tenga que llamarle por teléfono.`,
    }),
  },
  overdue: 'El plazo ya pasó.',
  by: (due) => `Hasta: ${due}.`,
  digest: (count, storehouse) => `${storehouse}: ${count === 1 ? 'una cosa' : `${count} cosas`} para usted`,
  single: (subject, storehouse) => `${storehouse}: ${subject}`,
  go: 'Abrirlo',
  stop: 'No más cartas sobre esto',
  stopAll: 'Ninguna carta más, salvo las de seguridad',
  cannotStop: 'Lo que trata de seguridad no se puede parar, solo confirmar.',
  stopTitle: '¿Parar estas cartas?',
  stopWords: (what) => `Ya no se le escribiría sobre: ${what}.`,
  stopButton: 'Pararlas',
  stoppedTitle: 'Ya no se le escribe sobre esto.',
  stoppedWords: 'Dentro del almacén, en Avisos, puede volver a pedirlo.',
  lostTitle: 'No hay nada en esta dirección.',
  lostWords: 'El enlace puede ser viejo, o se perdió una letra por el camino.',
  names: {
    all: 'todo salvo la seguridad',
    'pledge-closing': 'una compra que cierra',
    'deposit-due': 'depósitos',
    'landing-day': 'días de llegada',
    'food-waiting': 'alimento que espera',
    'packing-time': 'su tiempo en la línea',
    'packing-help': 'jornadas en las que ayuda',
    'loan-due': 'equipos por devolver',
    'equipment-late': 'equipos atrasados para usted',
    'equipment-offered': 'equipos que quedan libres',
    'equipment-asked': 'equipos que alguien pide recoger de usted',
    'relay-asked': 'equipos que se pasan directamente',
    'late-return': 'equipos que no han vuelto',
    'service-due': 'revisiones de equipos',
    'unfit-equipment': 'equipos que no se pueden prestar',
    'offer-open': 'lo que se le ofrece primero',
    'pick-up': 'horas para recoger',
    'offer-near': 'lo que pronto se ofrecerá',
    'gift-closes-near': 'lo que las despensas pronto no aceptarán',
    'eat-first-near': 'lo que comer primero',
    'balance-due': 'su saldo',
    'quote-lapses': 'ofertas que vencen',
    'bill-due': 'facturas',
    'claim-window': 'reclamaciones',
    'hand-over': 'entregas de alimento',
    'lid-check': 'tapas de frascos por presionar',
    'duty-ends': 'fines de cargos',
    'move-buy': 'pasos de una compra',
    notice: 'avisos',
  },
};
