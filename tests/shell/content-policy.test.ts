import { contentSecurityPolicy, securityHeaders } from '@service/security/content-policy';
import { expect, test } from 'vitest';

test('the policy lets our own files run and nothing else', () => {
  // Directives after the checklist's policy header, with `worker-src` for the PDF preview's own worker.
  expect(contentSecurityPolicy()).toBe(
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; " +
      "connect-src 'self'; worker-src 'self'; object-src 'none'; base-uri 'none'; form-action 'none'; " +
      "frame-ancestors 'none'",
  );
});

test('nothing unsafe, remote or open-ended stands in the policy of a build', () => {
  expect(contentSecurityPolicy()).not.toMatch(/unsafe|http|ws:|\*/);
});

test('development loosens styles and the reload socket, never scripts', () => {
  const policy = contentSecurityPolicy({ origin: 'http://127.0.0.1:5173' });
  expect(policy).toContain("script-src 'self';");
  expect(policy).toContain("style-src 'self' 'unsafe-inline'");
  expect(policy).toContain("connect-src 'self' http://127.0.0.1:5173 ws://127.0.0.1:5173");
  expect(policy).not.toContain('unsafe-eval');
});

test('the other headers forbid framing, sniffing and reading from other sites', () => {
  expect(securityHeaders()).toMatchObject({
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
  });
});
