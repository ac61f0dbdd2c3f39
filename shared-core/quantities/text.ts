import { z } from 'zod';

// C0 and C1 controls except tab and line feed, and the bidi overrides that could disguise a printed name.
const FORBIDDEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

function clean(maxLength: number) {
  return z
    .string('Enter text here.')
    .max(maxLength, {
      // Made when it is needed: the first use of the language's number formats takes long for a page that is opening.
      error: () => `Keep this to ${maxLength.toLocaleString('en')} characters or fewer.`,
    })
    .refine((text) => !FORBIDDEN.test(text), 'Remove the control characters (often pasted in by accident).');
}

/** A one-line name, trimmed, 1 to `maxLength` characters, without control characters or line breaks. */
export function nameText(what: string, maxLength = 200) {
  return clean(maxLength)
    .refine((text) => !/[\n\t]/.test(text), 'A name stays on one line.')
    .transform((text) => text.trim().normalize('NFC'))
    .refine((text) => text.length > 0, `Give ${what}.`);
}

/** Optional one-line text; empty is allowed. */
export function lineText(maxLength = 200) {
  return clean(maxLength)
    .refine((text) => !text.includes('\n'), 'This stays on one line.')
    .transform((text) => text.trim().normalize('NFC'));
}

/** Free text of several lines; empty is allowed. */
export function longText(maxLength = 10_000) {
  return clean(maxLength).transform((text) => text.normalize('NFC'));
}
