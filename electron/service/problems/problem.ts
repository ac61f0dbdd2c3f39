/** The hosts' way to it: they import from the service alone. */
export { Problem } from '@core/problems/problem';
