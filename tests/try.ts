import { demoLibrary } from '@core/demo/demo-library';
import { formulaCost } from '@core/costing/formula-cost';
import { formulaLines } from '@core/formulas/shares';
import { solveWithHighs } from '@service/emulsions/optimiser';
import { reformulate } from '@core/reformulate/reformulate';
import { reformulateWish } from '@core/reformulate/wish';
import { EXAMPLES } from './unit/limits/law';
const { materials, formulas } = demoLibrary();
const byId = Object.fromEntries(materials.map((m) => [m.id, m]));
const cream = formulas.find((f) => f.name === 'Hedgerow Day Cream')!;
const ids = new Set(formulaLines(cream).map((l) => l.materialId));
for (let i = 0; i < 3; i += 1) {
let n = 0; const log: string[] = [];
const solve = async (lp: string) => { const t = performance.now(); const s = await solveWithHighs(lp); n += 1; const bin = (lp.split('Binary')[1] ?? '').split('\n').length; log.push(`${Math.round(performance.now() - t)}/${bin}${s.status === 'optimal' ? '' : 'X'}`); return s; };
const t = performance.now();
const r = await reformulate({ content: cream, materials: materials.filter((m) => ids.has(m.id)), candidates: materials, law: EXAMPLES, onDay: '2026-11-28', currency: 'EUR', wish: reformulateWish.parse({ costAtMost: 0.85 * formulaCost(cream, byId, 'EUR').perKgMinor, withoutSubstances: ['Phenoxyethanol'] }) }, solve);
console.log(Math.round(performance.now() - t), n, log.join(' '));
if (r.status === 'found') for (const a of [r.best, ...r.alternatives]) console.log('  ', a.distance.toFixed(3), a.come.map((x) => byId[x]?.tradeName), a.go.map((x) => byId[x]?.tradeName));
}
process.exit();
