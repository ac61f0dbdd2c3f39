import type { Context } from 'hono';
import type { Refusal } from './refusal';

function page(title: string, head: string, body: string): string {
  return `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark"><title>${title}</title>
<link rel="icon" href="/icon.svg"><link rel="stylesheet" href="/door.css">${head}</head>
<body><main>${body}</main></body>
</html>
`;
}

/**
 * Leads in. A page of our own does, not a redirect: one that began on another site, or in a file, would come without
 * the cookie, which is strict.
 */
export function frontDoor(c: Context): Response {
  c.header('Cache-Control', 'no-store');
  const lead = '<meta http-equiv="refresh" content="0; url=/">';
  return c.html(page('Stillroom', lead, '<p><a href="/">Go to Stillroom</a></p>')) as Response;
}

/** What someone without this run's secret sees. */
export function lockedDoor({ status, title, advice }: Refusal): Response {
  const kept =
    'What was marked “Saved” is safe in the library. What could not be saved is kept in this browser, and is ' +
    'offered again.';
  const body = `<h1>${title}</h1><p>${advice}</p><p>${kept}</p><p><a href="/">Try again</a></p>`;
  const headers = { 'Content-Type': 'text/html; charset=utf-8', 'Cache-Control': 'no-store' };
  return new Response(page('Stillroom', '', body), { status, headers });
}
