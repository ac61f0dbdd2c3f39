import { z } from 'zod';

// C0 and C1 controls except tab and line feed, and the bidi overrides that could disguise a printed name.
const FORBIDDEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

/** A character that leaves no mark on screen or paper: zero-width ones, joiners, fillers, variation selectors. */
export const INVISIBLE = /\p{Default_Ignorable_Code_Point}/u;
// The blank braille cell is drawn as nothing, but is no space to Unicode.
const SOMETHING_TO_SEE = /[^\p{Default_Ignorable_Code_Point}\s\u2800]/u;

/** Breaks that web pages and letters are copied with; no typeface has a sign for them. */
const SEPARATORS = /[\u2028\u2029]/g;
/** Most texts are this: nothing of them is to be composed, and a library holds many. */
const PLAIN = /^[ -~]*$/;

function clean(maxLength: number, broken: '\n' | ' ') {
  return (
    z
      .string('Enter text here.')
      // Composed before it is measured: a few signs fall apart, and the text would be too long when it is read again.
      .overwrite((text) => (PLAIN.test(text) ? text : text.replace(SEPARATORS, broken).normalize('NFC')))
      .max(maxLength, {
        // Made when it is needed: the first use of the language's number formats takes long for a page that is opening.
        error: () => `Keep this to ${maxLength.toLocaleString('en')} characters or fewer.`,
      })
      .refine((text) => !FORBIDDEN.test(text), 'Remove the control characters (often pasted in by accident).')
  );
}

/** A one-line name, trimmed, 1 to `maxLength` characters of which one can be seen, without control characters or line breaks. */
export function nameText(what: string, maxLength = 200) {
  return clean(maxLength, ' ')
    .refine((text) => !/[\n\t]/.test(text), 'A name stays on one line.')
    .transform((text) => text.trim())
    .refine((text) => SOMETHING_TO_SEE.test(text), `Give ${what}.`);
}

/** Optional one-line text; empty is allowed. */
export function lineText(maxLength = 200) {
  return clean(maxLength, ' ')
    .refine((text) => !text.includes('\n'), 'This stays on one line.')
    .transform((text) => text.trim());
}

/** Optional text that another one is joined to: a space that it ends in is meant, and kept. */
export function beginningText(maxLength: number) {
  return clean(maxLength, ' ')
    .refine((text) => !/[\n\t]/.test(text), 'This stays on one line.')
    .transform((text) => text.trimStart());
}

/** Free text of several lines; empty is allowed. */
export function longText(maxLength = 10_000) {
  return clean(maxLength, '\n');
}
