import type { Source } from '../../working/working';
import { SYSTEM_RULES } from './all-rules';
import type { EmulsifierSystem } from './system';
import type { Wish } from './wish';

/** What one rule said of a system. `points` = weight × strength, below zero when against. */
export interface Reason {
  ruleId: string;
  name: string;
  verdict: 'for' | 'against';
  strength: number;
  weight: number;
  points: number;
  why: string;
  /** Whether a formula of this system would meet a warning of our own checks for it. */
  warns: boolean;
  source: Source;
}

export type SystemVerdict =
  | { refused: false; score: number; reasons: Reason[] }
  | { refused: true; ruleId: string; name: string; why: string; source: Source };

/** Weights by rule id; a rule not named keeps its own. */
export type RuleWeights = Readonly<Record<string, number>>;

/** Judges one system by every rule: refused by the first that refuses it, else scored, the weightiest reasons first. */
export function judgeSystem(system: EmulsifierSystem, wish: Wish, weights: RuleWeights = {}): SystemVerdict {
  const reasons: Reason[] = [];
  for (const rule of SYSTEM_RULES) {
    const judgement = rule.judge(system, wish);
    if (judgement.verdict === 'neutral') continue;
    const { id: ruleId, name, source } = rule;
    if (judgement.verdict === 'refuses') return { refused: true, ruleId, name, why: judgement.why, source };
    const weight = weights[ruleId] ?? rule.weight;
    const { verdict, strength, why } = judgement;
    const points = weight * strength * (verdict === 'for' ? 1 : -1);
    const warns = judgement.verdict === 'against' && (judgement.warns ?? false);
    reasons.push({ ruleId, name, verdict, strength, weight, points, why, warns, source });
  }
  const score = reasons.reduce((sum, reason) => sum + reason.points, 0);
  reasons.sort((a, b) => Math.abs(b.points) - Math.abs(a.points));
  return { refused: false, score, reasons };
}
