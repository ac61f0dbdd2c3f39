import { acceptanceOf, isAcceptable, judgedFindings } from '@core/checks/accepted';
import { CHECKS, canBeSwitchedOff, checkFormula } from '@core/checks/all';
import type { Finding } from '@core/checks/check';
import type { FormulaContent } from '@core/formulas/formula';
import { demoLibrary } from '@core/demo/demo-library';
import { describe, expect, it } from 'vitest';

const given = { id: 'a-1', reason: 'Tested in a challenge test', by: 'M. Invented', on: '2026-03-31' };

const { formulas, materials } = demoLibrary();
const known = new Map(materials.map((one) => [one.id, one]));
const cases = formulas.map((content) => ({ content, findings: checkFormula({ content, materials: known }) }));

function acceptAll(content: FormulaContent, findings: readonly Finding[]): FormulaContent {
  const accepted = findings.flatMap(
    (finding, at) => acceptanceOf(finding, content, { ...given, id: `a-${at}` }) ?? [],
  );
  return { ...content, accepted };
}

describe('accepted findings, over every formula of the demonstration', () => {
  it('leaves open what must be put right, and nothing else, once all the others are accepted', () => {
    expect(cases.flatMap(({ findings }) => findings).some(isAcceptable)).toBe(true);
    for (const { content, findings } of cases) {
      const judged = judgedFindings(findings, acceptAll(content, findings));
      expect(judged.open).toEqual(findings.filter(({ severity }) => severity === 'stop'));
      expect(judged.accepted.length).toBe(findings.filter(isAcceptable).length);
      expect(judged.past).toEqual([]);
    }
  });

  it('asks anew when another material is meant, and when it has become more serious', () => {
    for (const { content, findings } of cases)
      for (const finding of findings.filter((one) => isAcceptable(one) && one.lines.length > 0)) {
        const accepted = acceptAll(content, [finding]);
        const swapped = content.phases.map((phase) => ({
          ...phase,
          lines: phase.lines.map((line) =>
            finding.lines.includes(line.id) ? { ...line, materialId: 'another' } : line,
          ),
        }));
        const other = judgedFindings([finding], { ...accepted, phases: swapped });
        expect(other.open).toEqual([finding]);
        expect(other.past).toEqual(accepted.accepted);
        const worse: Finding = { ...finding, severity: 'stop' };
        expect(judgedFindings([worse], accepted).open).toEqual([worse]);
        const moved = finding.title.replace(/\d+/, (figure) => String(Number(figure) + 1));
        const milder: Finding = { ...finding, severity: 'note', title: moved };
        expect(judgedFindings([milder], accepted).open).toEqual([]);
        const another: Finding = { ...finding, title: 'What the same check says of them besides' };
        expect(judgedFindings([another], accepted).open).toEqual([another]);
      }
  });

  it('keeps a reason whose finding is gone, to be removed by whoever wrote it', () => {
    const found = cases.find(({ findings }) => findings.some(isAcceptable))!;
    const judged = judgedFindings([], acceptAll(found.content, found.findings));
    expect(judged.past.length).toBe(found.findings.filter(isAcceptable).length);
  });

  it('never accepts what must be put right', () => {
    const { content } = cases[0]!;
    const stop: Finding = {
      ...{ ruleId: 'total', severity: 'stop', title: 'Too much', lines: [], advice: '' },
      source: { text: '', basis: 'library' },
    };
    expect(acceptanceOf(stop, content, given)).toBeNull();
  });
});

describe('a check that is switched off', () => {
  it('is silent, and every other one says what it said', () => {
    for (const rule of CHECKS.filter(canBeSwitchedOff))
      for (const { content, findings } of cases) {
        const left = checkFormula(
          { content, materials: known },
          { checksOff: [rule.id], checkThresholds: {} },
        );
        expect(left).toEqual(findings.filter(({ ruleId }) => ruleId !== rule.id));
      }
  });

  it('is never one that says whether there is a formula at all', () => {
    expect(CHECKS.filter((rule) => !canBeSwitchedOff(rule)).map((rule) => rule.id)).toEqual([
      'empty',
      'total',
      'missing-material',
    ]);
    const bare = { ...cases[0]!.content, phases: [] };
    const off = { checksOff: CHECKS.map((rule) => rule.id), checkThresholds: {} };
    expect(checkFormula({ content: bare, materials: known }, off).map(({ ruleId }) => ruleId)).toContain(
      'empty',
    );
  });

  it('has a name, and says what would be missed', () => {
    expect(new Set(CHECKS.map((rule) => rule.id)).size).toBe(CHECKS.length);
    expect(new Set(CHECKS.map((rule) => rule.tells)).size).toBe(CHECKS.length);
  });
});

describe('a threshold that the maker has set', () => {
  it('moves where a check begins to speak: a line of 0.5 % is small when less than 1 % is', () => {
    const { content } = cases.find(({ content: one }) =>
      one.phases.some((phase) => phase.lines.some((line) => !line.toHundred && line.ppm === 5_000)),
    )!;
    const small = (checkThresholds: Record<string, number>): Finding[] =>
      checkFormula({ content, materials: known }, { checksOff: [], checkThresholds }).filter(
        ({ ruleId }) => ruleId === 'small-lines',
      );
    expect(small({ 'small-lines': 0 })).toEqual([]);
    expect(small({ 'small-lines': 10_000 })[0]?.title).toMatch(/^Less than 1 %: /);
  });
});
