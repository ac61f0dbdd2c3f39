import { runCase } from './run-case';
import type { CaseResult } from './run-case';

/** What one case file came to; `problem` says why it held no cases that could be run. */
export interface FileResult {
  file: string;
  results: CaseResult[];
  problem: string;
}

/** Runs every case in a file's text: a JSON list of cases, or one case. Never throws. */
export function runCaseFile(file: string, text: string): FileResult {
  let content: unknown;
  try {
    content = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (cause) {
    return {
      file,
      results: [],
      problem: `not JSON: ${cause instanceof Error ? cause.message : String(cause)}`,
    };
  }
  const cases = Array.isArray(content) ? content : isObject(content) ? [content] : null;
  if (!cases) return { file, results: [], problem: 'malformed: a case file is a list of cases' };
  if (cases.length === 0) return { file, results: [], problem: 'malformed: it holds no cases' };
  return { file, results: cases.map((one, index) => runCase(one, `case ${index + 1}`)), problem: '' };
}

/** One line a case: id, expected, got, and pass or fail. */
export function caseLine(result: CaseResult): string {
  const why = result.why && ` (${result.why})`;
  const mark = result.passed ? 'pass' : 'fail';
  return `${result.id}: expected ${result.expected || 'nothing readable'}; got ${result.got}; ${mark}${why}`
    .replace(/\s+/g, ' ')
    .trim();
}

function isObject(value: unknown): boolean {
  return typeof value === 'object' && value !== null;
}
