import type { Source } from './working';

/** What a reader is told of how a source is known; nothing where its text says it. */
const MARKS: Record<Source['basis'], { mark: string; unless: RegExp }> = {
  read: { mark: '', unless: /^/ },
  memory: { mark: ' (not verified)', unless: /not verified/ },
  'common-practice': { mark: ' (common practice, no source)', unless: /common practice/i },
  library: { mark: ' (as recorded in the library)', unless: /record|library|supplier/i },
  user: { mark: ' (as entered)', unless: /enter|prefer/i },
};

/** A source as screens and sheets name it, with "not verified" where it is so. */
export function sourceWords({ text, basis }: Source): string {
  const { mark, unless } = MARKS[basis];
  return unless.test(text) ? text : text + mark;
}

/** Several sources on one line, none twice. */
export function sourcesWords(sources: readonly Source[]): string {
  return [...new Set(sources.map(sourceWords))].join('; ');
}
