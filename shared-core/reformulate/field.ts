import { formulaFacts } from '../checks/facts';
import { servesType } from '../emulsions/systems/character';
import { hlbOfFormula } from '../formulas/change/consequences';
import type { FormulaContent } from '../formulas/formula';
import { formulaLines, formulaShares } from '../formulas/shares';
import { situationsOf } from '../limits/in-formula';
import type { Law } from '../limits/law';
import type { Material } from '../materials/material';
import type { Currency } from '../quantities/money';
import { percentFromPpm, WHOLE_PPM } from '../quantities/share';
import { substanceIndex } from '../substances/substance-index';
import { badInput } from '../working/inputs';
import { leftOut, playerOf, supplierKey, type LawRow, type Player, type PlayerGround } from './player';
import { KEPT_ROLES, roleOf, WATER } from './roles';
import type { ReformulateWish } from './wish';

/** What a formula is reformulated from. */
export interface ReformulateInput {
  content: FormulaContent;
  /** The materials of its lines, and those that may come in. */
  materials: readonly Material[];
  candidates: readonly Material[];
  law: Law;
  onDay: string;
  currency: Currency;
  wish: ReformulateWish;
}

/** All that the model is built of. */
export interface Field {
  players: Player[];
  wish: ReformulateWish;
  /** Materials of locked lines: their shares stay. */
  locked: ReadonlySet<string>;
  limits: LawRow[];
  /** The required HLB of now, which offered and required are held to; null where HLB says nothing here. */
  hlb: number | null;
  /** Base less acid of now, mmol in 100 g. */
  baseLessAcid: number;
  currency: Currency;
  /** What is not counted or not asked, to be said beside every answer. */
  cautions: string[];
}

function sharesNow(content: FormulaContent): Map<string, number> {
  const { byLine, totalPpm } = formulaShares(content);
  if (totalPpm !== WHOLE_PPM || [...byLine.values()].some((ppm) => ppm < 0))
    throw badInput(
      'The formula does not come to 100 %, so nothing can be near to it.',
      'Bring its lines to 100 % first: distribute the rest, or mark a line q.s.',
    );
  const sums = new Map<string, number>();
  for (const { id, materialId } of formulaLines(content))
    sums.set(materialId, (sums.get(materialId) ?? 0) + percentFromPpm(byLine.get(id) ?? 0));
  return sums;
}

function groundOf({ content, law, onDay, currency, wish }: ReformulateInput): PlayerGround {
  const index = substanceIndex(law.substances);
  return {
    currency,
    law: wish.keepLaw ? law : { ...law, limits: [] },
    situations: situationsOf(content, onDay),
    emulsionType: content.productType === 'w/o emulsion' ? 'w/o' : 'o/w',
    withoutSuppliers: new Set(wish.withoutSuppliers.map(supplierKey)),
    withoutSubstances: leftOut(wish.withoutSubstances, index),
  };
}

/** What of the formula a new material has to fit. */
interface Openings {
  /** Roles that take new materials. */
  roles: ReadonlySet<string>;
  hlbKnown: boolean;
  emulsionType: 'o/w' | 'w/o';
  /** The pH that the formula is made to. */
  ph: { low: number; high: number } | null;
}

function worksAt({ figures: { workingPh } }: Material, ph: Openings['ph']): boolean {
  if (!workingPh || !ph) return true;
  return (workingPh.low ?? 0) <= ph.low && (workingPh.high ?? 14) >= ph.high;
}

/** Whether a material does what is wanted and has a range to be used in: what can be told at a glance. */
function isWanted(material: Material, { roles, emulsionType, ph }: Openings): boolean {
  const role = roleOf(material);
  if (role === WATER || role === 'others' || !roles.has(role) || material.status === 'archived') return false;
  if (material.withdrawnOn !== '') return false;
  if (!material.usage?.maxPpm || !worksAt(material, ph)) return false;
  return role !== 'emulsifiers' || servesType(material.emulsionType, emulsionType);
}

/** Whether a material may come into the formula at all; what is asked of shares is for the model. */
function mayCome(player: Player, wish: ReformulateWish, { hlbKnown }: Openings): boolean {
  if (player.barred !== null || (wish.costAtMost !== null && player.cost === null)) return false;
  if (!hlbKnown) return true;
  if (player.role === 'emulsifiers') return player.hlb !== null;
  return !player.isOil || player.required !== null;
}

function cautionsOf(own: readonly Player[], wish: ReformulateWish, hlb: number | null): string[] {
  const unpriced = own
    .filter(({ cost, now }) => cost === null && now > 0)
    .map(({ material }) => material.tradeName);
  const open = own
    .filter(({ material }) => !material.usage?.maxPpm)
    .map(({ material }) => material.tradeName);
  return [
    ...(wish.costAtMost !== null && unpriced.length > 0
      ? [`Without a price, and not counted in the cost: ${unpriced.join(', ')}. Their shares may not rise.`]
      : []),
    ...(wish.keepRanges && open.length > 0
      ? [`No highest use is recorded for ${open.join(', ')}: up to double the present share is allowed.`]
      : []),
    ...(wish.hlbWithin !== null && hlb === null
      ? [
          'No HLB is held: this is not an emulsion, or no oil has a required HLB, or no emulsifier one that can be averaged.',
        ]
      : []),
    'Origin counts at the lower end of what is known, substances at the upper end of suppliers’ ranges.',
    'This is computed, not made: texture, stability, preservation and safety are for trials, a challenge test and a qualified assessor.',
  ];
}

/** Reads a formula and its candidates into the players of the model. @throws Problem `invalid-input` */
export function fieldOf(input: ReformulateInput): Field {
  const { content, wish } = input;
  const now = sharesNow(content);
  const ground = groundOf(input);
  const known = new Map(input.materials.map((one) => [one.id, one]));
  const gone = [...now.keys()].filter((id) => !known.has(id));
  if (gone.length > 0)
    throw badInput(
      'A line names a material that is no longer in the library.',
      'Replace or remove it first.',
    );
  const facts = formulaFacts({ content, materials: known });
  const { required, offered } = hlbOfFormula(facts);
  const hlb = wish.hlbWithin !== null && offered !== null ? required : null;
  const own = [...now].map(([id, share], at) => playerOf(known.get(id) as Material, share, at, ground));
  const open = own.filter(({ role, barred }) => !KEPT_ROLES.has(role) || barred !== null);
  const openings: Openings = {
    roles: new Set(open.map(({ role }) => role)),
    hlbKnown: hlb !== null,
    emulsionType: ground.emulsionType,
    ph: facts.ph,
  };
  const others = input.candidates
    .filter((one) => !now.has(one.id) && isWanted(one, openings))
    .map((one, at) => playerOf(one, 0, own.length + at, ground))
    .filter((player) => mayCome(player, wish, openings));
  const players = [...own, ...others];
  const lines = new Map(formulaLines(content).map((line) => [line.id, line.materialId]));
  return {
    players,
    wish,
    currency: input.currency,
    locked: new Set(wish.locked.flatMap((id) => lines.get(id) ?? [])),
    limits: [...new Map(players.flatMap(({ limits }) => limits).map((row) => [row.key, row])).values()],
    hlb,
    baseLessAcid: own.reduce((sum, player) => sum + player.now * player.baseLessAcid, 0),
    cautions: cautionsOf(own, wish, hlb),
  };
}
