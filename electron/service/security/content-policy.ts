/** The origin of the development server, whose page reloads itself; absent in every build that a maker runs. */
export interface DevelopmentServer {
  /** Such as `http://127.0.0.1:5173`. */
  origin: string;
}

const PRODUCTION: Record<string, string> = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'frame-ancestors': "'none'",
};

/**
 * The Content-Security-Policy of every response. Nothing but our own files runs, and nothing leaves the machine.
 * Development loosens two directives: hot reload writes `<style>` elements and talks over a web socket.
 */
export function contentSecurityPolicy(development?: DevelopmentServer): string {
  const directives = { ...PRODUCTION };
  if (development) {
    const socket = development.origin.replace(/^http/, 'ws');
    directives['style-src'] = "'self' 'unsafe-inline'";
    directives['connect-src'] = `'self' ${development.origin} ${socket}`;
  }
  return Object.entries(directives)
    .map(([name, value]) => `${name} ${value}`)
    .join('; ');
}

/** The headers of every response, on every host. */
export function securityHeaders(development?: DevelopmentServer): Record<string, string> {
  return {
    'Content-Security-Policy': contentSecurityPolicy(development),
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    // Same-origin, not no-referrer: under the latter a browser may send `Origin: null` with our own writes.
    'Referrer-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
    'Permissions-Policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()',
  };
}
