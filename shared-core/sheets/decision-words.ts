import { standingOf, type VersionDecision } from '../formulas/decision';
import { formatDate } from '../locale/dates';
import type { Region } from '../locale/numbers';
import type { Fact } from './kit/facts';

type Decided = { number: number; decisions?: readonly VersionDecision[] } | null;

/** The approval of a printed version, beside its other facts; empty where there is none. */
export function decisionFacts(version: Decided, region: Region): Fact[] {
  return (version?.decisions ?? [])
    .filter(({ decision }) => decision === 'approved')
    .map(({ by, on }) => ({ label: 'Approved', value: `${by}, ${formatDate(on, region)}` }));
}

/**
 * Said first on every sheet of a version that was withdrawn. Who decided and why stay behind when it is shared: reasons
 * name suppliers.
 */
export function withdrawnCaution(version: Decided, region: Region, shared = false): string[] {
  const last = version?.decisions?.at(-1);
  if (!version || !last || standingOf(version.decisions ?? []) !== 'withdrawn') return [];
  if (shared)
    return [`WITHDRAWN: version ${version.number} on ${formatDate(last.on, region)}. Do not make it.`];
  return [
    `WITHDRAWN: version ${version.number} by ${last.by} on ${formatDate(last.on, region)}: ${last.reason} Do not make it.`,
  ];
}
