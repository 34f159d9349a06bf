import type { Override } from '../fitting/fitting.ts';
import type { Finding } from './finding.ts';

const matches = ({ code, side }: Override, finding: Finding): boolean =>
  finding.severity === 'stop' && finding.code === code && (side === undefined || finding.side === side);

/**
 * Marks each stop that the maker takes on his own name; it stays a stop and stands on every paper. An override that
 * meets no stop becomes a note.
 */
export function applyOverrides(findings: readonly Finding[], overrides: readonly Override[]): Finding[] {
  const marked = findings.map((finding): Finding => {
    const taken = overrides.find((override) => matches(override, finding));
    return taken ? { ...finding, overriddenBy: { by: taken.by, reason: taken.reason } } : finding;
  });
  const idle = overrides.filter((override) => !findings.some((finding) => matches(override, finding)));
  return [...marked, ...idle.map(idleOverride)];
}

const idleOverride = ({ code, side, by }: Override): Finding => ({
  code: 'OVERRIDE_IDLE', severity: 'note', ...(side ? { side } : {}), unit: '', where: 'fitting sheet',
  text: `On the sheet ${by} takes a stop ${code}${side ? ` of the ${side} shoe` : ''} on his own name (overrides), but there is no such stop. Take it off the sheet, or look whether the code is right.`, basis: 'common practice',
});

/** Stops that nobody has taken on his own name. */
export const stopsLeft = (findings: readonly Finding[]): Finding[] =>
  findings.filter(({ severity, overriddenBy }) => severity === 'stop' && overriddenBy === undefined);
