import { dayInZone } from '@sheafbook/units';
import type { OpenItem } from './open-item.ts';
import type { NextSteps, NextStepView } from './use-cases.ts';

export function presentNextStep({ buy, step, due, mayMove, who, missing, action, pages }: NextStepView) {
  return {
    buyId: buy.buyId,
    name: buy.name,
    stage: buy.stage,
    version: buy.version,
    nextStage: step?.to ?? null,
    words: step?.words ?? '',
    dueOn: due.dueOn,
    dueAt: due.dueAt?.toISOString() ?? null,
    mayMove,
    who,
    missing,
    action: action && { method: 'POST' as const, path: action.path, body: action.body },
    pages,
  };
}

export function presentNextSteps({ actor, now, items }: NextSteps) {
  const todayOn = dayInZone(now.getTime(), actor.timeZone);
  const isOverdue = ({ dueOn, dueAt, endsAt }: OpenItem) => {
    const lastAt = endsAt ?? dueAt;
    return lastAt ? lastAt < now : dueOn !== null && dueOn < todayOn;
  };
  return {
    currency: actor.currency,
    items: items.map((item) => ({
      kind: item.kind,
      words: item.words,
      wordsEs: item.wordsEs ?? null,
      buyId: item.buy?.buyId ?? null,
      buyName: item.buy?.name ?? null,
      stage: item.buy?.stage ?? null,
      dueOn: item.dueOn,
      dueAt: item.dueAt?.toISOString() ?? null,
      endsAt: item.endsAt?.toISOString() ?? null,
      isOverdue: isOverdue(item),
      minorUnits: item.minorUnits,
      path: item.path,
      isOfStore: item.isOfStore ?? false,
    })),
  };
}
