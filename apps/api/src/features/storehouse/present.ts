import type { RulesRow, StorehouseRow } from '@sheafbook/db/tables';

export function presentRules(rules: RulesRow) {
  return {
    rulesVersion: rules.rulesVersion,
    depositPercent: rules.depositPercent,
    freightBasis: rules.freightBasis,
    blendNumerator: rules.blendNumerator,
    blendDenominator: rules.blendDenominator,
    splitRule: rules.splitRule,
    commonCapGrams: rules.commonCapGrams,
    levyHundredthsOfPercent: rules.levyHundredthsOfPercent,
    writeOffLimitMinorUnits: rules.writeOffLimitMinorUnits,
    priceRisePercent: rules.priceRisePercent,
    claimWindowHours: rules.claimWindowHours,
    uncollectedDays: rules.uncollectedDays,
    offerDays: rules.offerDays,
    offerDaysWithoutPantry: rules.offerDaysWithoutPantry,
    giftWindowDays: rules.giftWindowDays,
    eatFirstMarginDays: rules.eatFirstMarginDays,
    decidedAt: rules.decidedAt.toISOString(),
  };
}

export function presentStorehouse({ storehouse, rules }: { storehouse: StorehouseRow; rules: RulesRow }) {
  return {
    id: storehouse.storehouseId,
    name: storehouse.name,
    currency: storehouse.currency,
    timeZone: storehouse.timeZone,
    massDisplay: storehouse.massDisplay,
    language: storehouse.language,
    yearEndMonth: storehouse.yearEndMonth,
    version: storehouse.version,
    rules: presentRules(rules),
  };
}
