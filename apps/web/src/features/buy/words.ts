import { en as enOrder } from '../../text/en/order.ts';
import { en as enPlan } from '../../text/en/plan.ts';
import { en as enPledge } from '../../text/en/pledge.ts';
import { en as enQuotes } from '../../text/en/quotes.ts';
import { en as enRun } from '../../text/en/run.ts';
import { es as esOrder } from '../../text/es/order.ts';
import { es as esPlan } from '../../text/es/plan.ts';
import { es as esPledge } from '../../text/es/pledge.ts';
import { es as esQuotes } from '../../text/es/quotes.ts';
import { es as esRun } from '../../text/es/run.ts';
import { useWords } from '../../text/taste.ts';

/** The words of whoever runs a buy. */
export const useRunText = () => useWords({ en: enRun, es: esRun });
/** The words of planning one. */
export const usePlanText = () => useWords({ en: enPlan, es: esPlan });
/** The words of a buy's quotes. */
export const useQuotesText = () => useWords({ en: enQuotes, es: esQuotes });
/** The words of fixing a buy and of ordering it. */
export const useOrderText = () => useWords({ en: enOrder, es: esOrder });
/** The words of a pledge and of what it did. */
export const usePledgeText = () => useWords({ en: enPledge, es: esPledge });
