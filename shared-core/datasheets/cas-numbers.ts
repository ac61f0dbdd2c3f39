const CAS = /(?<![\d-])(\d{2,7})-(\d{2})-(\d)(?![\d-])/g;

/** Whether the last digit of a CAS number is the one that the others ask for (CAS: check digit verification). */
function checks(first: string, second: string, check: string): boolean {
  const sum = [...`${first}${second}`]
    .reverse()
    .reduce((total, digit, at) => total + Number(digit) * (at + 1), 0);
  return sum % 10 === Number(check);
}

/** The CAS numbers of a text whose check digit is right, each once; null where one of them is wrong. */
export function casNumbersOf(text: string): string[] | null {
  const found = [...text.replace(/[‐‑–]/g, '-').matchAll(CAS)];
  if (found.some(([, first, second, check]) => !checks(first!, second!, check!))) return null;
  return [...new Set(found.map(([all]) => all))];
}
