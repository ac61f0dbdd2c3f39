/** The moment at which the demonstration library says it was written, ISO 8601 in UTC. */
export const DEMO_MOMENT = '2026-09-01T08:00:00.000Z';
