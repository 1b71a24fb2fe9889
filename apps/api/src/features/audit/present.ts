import type { Audit } from './use-cases.ts';

export function presentAudit(audit: Audit) {
  return {
    storehouse: audit.storehouse,
    holds: audit.holds,
    findings: audit.findings.map(({ number, key, invariant, holds, figure }) => ({
      number,
      key,
      invariant,
      holds,
      figure,
    })),
    ledger: { ...audit.ledger },
  };
}

/** An audit to read in a terminal: one line a finding, what does not hold standing out. */
export function auditText(audit: Audit): string {
  const lines = audit.findings.map(
    ({ number, invariant, holds, figure }) =>
      `${holds ? 'holds' : 'FAILS'}  ${String(number).padStart(2)}  ${invariant} (${figure})`,
  );
  const failing = audit.findings.filter((finding) => !finding.holds).length;
  const verdict = failing === 0 ? 'Everything holds.' : `${failing} of ${audit.findings.length} do not hold.`;
  return [audit.storehouse, ...lines.map((line) => `  ${line}`), `  ${verdict}`].join('\n');
}
