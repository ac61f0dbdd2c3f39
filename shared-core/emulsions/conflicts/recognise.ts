import type { Material } from '../../materials/material';
import { fold } from '../../quantities/fold';
import { namesWithin } from '../../substances/names';

/**
 * What a material is, where the record alone does not say: read from its functions first, then from its INCI names.
 * The names below are those of the INCI dictionary (from memory); a name not listed is simply not recognised.
 */

/** Acids that a base turns into soap. */
const FATTY_ACID =
  /^(hydrogenated )?(capric|caprylic|lauric|myristic|palmitic|stearic|isostearic|(12-)?hydroxystearic|oleic|linoleic|linolenic|erucic|behenic|arachidic|ricinoleic|coconut|palm kernel|tallow|palm|olive|soy|rapeseed|sunflower seed|linseed|cottonseed|peanut|corn|tall oil|c\d+-\d+) acid$/;
const SOAP =
  /^(sodium|potassium|ammonium|tea|triethanolamine|mea|amp)[- ](stearate|palmitate|oleate|laurate|myristate|isostearate|behenate|linoleate|caprate|caprylate|cocoate|tallowate|palmate|palm kernelate|olivate|soyate|ricinoleate|castorate|rapeseedate|canolate|babassuate|lardate|almondate|avocadoate|peanutate|arganate|laurelate|neemate|\w+seedate|\w+ ?butterate)$|^glyceryl stearate se$/;
const ACRYLIC_POLYMER =
  /^carbomer$|^(acrylates\/(?!.*(dimethicone|siloxy)).*(crosspolymer|copolymer).*|acrylates (copolymer|crosspolymer(-\d+)?)|polyacrylate(?!-1 )(-\d+)? crosspolymer(-\d+)?|polyacrylate-13|(sodium|potassium) (carbomer|polyacrylate.*|acrylates.*)|polyacrylic acid|.*acryloyldimethyl ?taurate.*)$/;
const ANIONIC_GUM =
  /^((crosslinked )?xanthan gum|cellulose gum|sodium carboxymethyl.*|algin|sodium alginate|alginic acid|(sodium )?carrageenan|chondrus crispus.*|acacia senegal gum|gellan gum|pectin|(sodium |potassium )?(hydrolyzed |acetylated )?(sodium )?hyaluron(ate|ic acid)( crosspolymer)?|sclerotium gum sulfate|tragacanth.*|astragalus gummifer gum|dehydroxanthan gum|sodium polystyrene sulfonate)$/;
const ACYL = '(lauroyl|cocoyl|capryloyl|caproyl|myristoyl|palmitoyl|stearoyl|isostearoyl|oleoyl|behenoyl)';
const ANIONIC_SURFACTANT = new RegExp(
  [
    '(laur|myr|par|tridec|ol|lan|dec|coc|cetear)eth(-\\d+)? sulfate$',
    '(lauryl|coco|coco-|cetearyl|cetyl|myristyl|stearyl|oleyl|decyl|octyl|ethylhexyl|cocomonoglyceride|tallow) ?sulfate$',
    'sulfosuccinate$|sulfoacetate$|isethionate$|olefin sulfonate$|sec sulfonate$|benzenesulfonate$|2-sulfo(laur|myrist|palmit|coco)',
    'eth-\\d+ carboxyl(ate|ic acid)$|glucose carboxylate$|glucosides? (citrate|tartrate)$|^glyceryl (stearate|oleate) citrate$',
    `${ACYL} .*(sarcosinate|glutamate|taurate|isethionate|glycinate|lactylate|alaninate|threoninate|aspartate|prolinate|methylaminopropionate|serinate)$`,
    `${ACYL} (sarcosine|proline|.*amino acids|hydrolyzed .*)$`,
    '(lauryl|cetyl|cetearyl|stearyl|myristyl|behenyl|oleyl|c\\d+-\\d+ alkyl|eth-\\d+) phosphate$|surfactin$',
  ].join('|'),
);
// Polyacrylate-1 crosspolymer bears amines, and swells in acid; its other numbers bear acids.
const CATIONIC_POLYMER =
  /^polyquaternium-\d+$|^polyacrylate-1 crosspolymer$|hydroxypropyltrimonium|dimonium hydroxypropyl|^chitosan/;
const CATIONIC_SURFACTANT =
  /^(hexamidine|chlorhexidine|octenidine|polyaminopropyl biguanide|quaternium-(?!15\b)\d+\b(?! (bentonite|hectorite))|ethyl lauroyl arginate|lauroyl arginate)|^(methyl)?benzethonium |^domiphen |isoleucinate esylate$|imidazoline\)|(trimonium|dimonium|alkonium|pyridinium) (chloride|bromide|methosulfate|ethosulfate|tosylate|phosphate)$|ethyl .*monium methosulfate$|morpholinium ethosulfate$|amido(propyl|ethyl) di(m|)ethylamine( lactate| citrate| phosphate)?$|^(benzalkonium|cetrimonium|behentrimonium) /;
/** Chains of ethylene oxide: they lose water, and their grip on it, as it gets hot. */
const OXYETHYLENE =
  /eth-\d+|oxynol-\d+|\bpeg(-?\d|\/)|polysorbate|poloxam|(laur|myr|tridec|par|coc|ol)eth (sulfate|sulfosuccinate|phosphate|carboxyl)/;
const CLAY =
  /^(bentonite|hectorite|magnesium aluminum silicate|kaolin|montmorillonite|illite|smectite|lithium magnesium sodium silicate|sodium magnesium (fluoro)?silicate)$/;
const ALKALI =
  /^((sodium|potassium|ammonium|lithium|magnesium|calcium) hydroxide|ammonia|triethanolamine|diethanolamine|ethanolamine|aminomethyl propan(ol|ediol)|aminoethyl propanediol|tromethamine|diisopropanolamine|triisopropanolamine|tetrahydroxypropyl ethylenediamine|arginine|lysine|(sodium|potassium) (carbonate|bicarbonate|silicate|metasilicate)|sodium borate|trisodium phosphate)$/;
const MULTIVALENT =
  /^(magnesium|calcium|zinc|aluminum|strontium|copper|manganese|ferrous) (sulfate|chloride|gluconate|lactate|acetate|nitrate|pca|aspartate|ascorbyl phosphate|pantothenate)$|^aluminum (sesqui|di)?chlorohydr(ate|ex).*|^aluminum zirconium .*|^((potassium|ammonium) )?alum$/;
const SALT =
  /^(sodium|potassium|ammonium|magnesium|calcium|zinc) (chloride|sulfate|lactate|pca|citrate|acetate|ascorbyl phosphate|phosphate|gluconate|benzotriazolyl butylphenol sulfonate)$|^(sodium|trisodium) ascorbyl phosphate$|^(disodium|trisodium|dipotassium) .*phosphate$|^(sodium|potassium) (carbonate|bicarbonate|sulfite|bisulfite|metabisulfite)$|^(di|mono)?(potassium|ammonium) glycyrrhizate$|^maris sal$|^(dead )?sea salt$|^phenylbenzimidazole sulfonic acid$/;
const ORGANIC_SALT =
  /^((mono|di|tri|tetra)?(sodium|potassium)) (benzoate|sorbate|salicylate|dehydroacetate|levulinate|anisate|propionate|edta|phytate|glutamate diacetate|etidronate|citrate|lactate)$/;
const WATER =
  /^(aqua( purificata| destillata| demineralisata)?|water|eau|acqua|agua|wasser|maris aqua|sea water)$|\bwater$|juice$|\bsap$|hydrosol$/;
const CHELATOR =
  /edta$|^edta|phytate$|phytic acid|glutamate diacetate$|etidron|ethylenediamine disuccinate$|iminodisuccinate$|dicarboxymethyl alaninate$|pentet(ate|ic acid)$|^(sodium|potassium) gluconate$|^gluconic acid$|^galactaric acid$|\bnta$/;

type Composed = Pick<Material, 'composition'>;
type Described = Pick<Material, 'composition' | 'functions'>;

const FOLDED = new WeakMap<Composed['composition'], string[]>();

/** The INCI names, folded once: every check asks for them at every keystroke, and a composition is replaced, never edited. */
function names({ composition }: Composed): string[] {
  const known = FOLDED.get(composition);
  if (known) return known;
  // A supplier may have written several into one: "Behentrimonium Chloride (and) Cetearyl Alcohol".
  const folded = composition.flatMap((part) => namesWithin(fold(part.inci)));
  FOLDED.set(composition, folded);
  return folded;
}
const anyName = (material: Composed, pattern: RegExp): boolean =>
  names(material).some((name) => pattern.test(name));

/** A fatty acid: an anionic emulsifier only once a base has made soap of part of it. */
export const isFattyAcid = (material: Composed): boolean => anyName(material, FATTY_ACID);
/** A ready-made soap, alone or inside a blend such as a self-emulsifying glyceride. */
export const isSoap = (material: Composed): boolean => anyName(material, SOAP);
/** Carbomer and its acrylic relatives, neutralised or not. */
export const isAcrylicPolymer = (material: Composed): boolean => anyName(material, ACRYLIC_POLYMER);
export const isAnionicGum = (material: Composed): boolean => anyName(material, ANIONIC_GUM);
export const isAnionicSurfactant = (material: Composed): boolean => anyName(material, ANIONIC_SURFACTANT);
export const isCationicPolymer = (material: Composed): boolean => anyName(material, CATIONIC_POLYMER);
/** A quaternised gum or protein ends like a quaternary surfactant, and binds to anionics as a polymer does. */
export const isCationicSurfactant = (material: Composed): boolean =>
  names(material).some((name) => CATIONIC_SURFACTANT.test(name) && !CATIONIC_POLYMER.test(name));
/** Holds oxyethylene chains, by its name: alcohol ethoxylates, PEG esters, polysorbates, poloxamers. */
export const holdsOxyethylene = (material: Composed): boolean => anyName(material, OXYETHYLENE);
export const isClay = (material: Composed): boolean => anyName(material, CLAY);
export const isMultivalentSalt = (material: Composed): boolean => anyName(material, MULTIVALENT);

/** Something that neutralises an acid: recorded as a base, or an alkali by name. */
export function isBase(material: Described): boolean {
  return material.functions.includes('base') || anyName(material, ALKALI);
}

/** Something that brings free ions to the water phase in amount: recorded so, or a salt by name. */
export function isElectrolyte(material: Described): boolean {
  return material.functions.includes('electrolyte') || anyName(material, SALT) || isMultivalentSalt(material);
}

/** An ionic salt by its name, organic ones included: benzoate, sorbate and a chelator's salt shield charges too. */
export function isSalt(inci: string): boolean {
  const name = fold(inci).trim();
  return SALT.test(name) || MULTIVALENT.test(name) || ORGANIC_SALT.test(name);
}

export function isChelator(material: Described): boolean {
  return material.functions.includes('chelator') || anyName(material, CHELATOR);
}

/** Recorded as sensitive to salt, or carbomer and its relatives where nothing is recorded. */
export function isSaltSensitive(material: Composed & Pick<Material, 'electrolyteTolerance'>): boolean {
  const tolerance = material.electrolyteTolerance;
  return tolerance === 'low' || (tolerance === null && isAcrylicPolymer(material));
}

/** Fatty alcohols that are solid when cold, by their folded names: from C14 on ("C14-22 Alcohols"), straight chains only. */
export const FATTY_ALCOHOL =
  /^(cetyl|cetearyl|stearyl|behenyl|myristyl|arachidyl|c(1[4-9]|[2-9]\d)-\d+) alcohols?$/;
/** A fatty alcohol, alone or in a blend: it builds body beside a cationic as a non-ionic partner does. */
export const holdsFattyAlcohol = (material: Composed): boolean => anyName(material, FATTY_ALCOHOL);
/** Whether all of a material's INCI names fit a pattern. */
export const allNamed = (material: Composed, pattern: RegExp): boolean =>
  names(material).every((name) => pattern.test(name));
/** Whether any of a material's INCI names, folded, fits a pattern. */
export const named = (material: Composed, pattern: RegExp): boolean => anyName(material, pattern);

/** Whether an INCI name is or holds that of water; split, so that "Aqua/Water/Eau", "Aqua (Water)" and "Glycerin & Aqua" count. */
export function isWaterName(inci: string): boolean {
  return namesWithin(fold(inci))
    .flatMap((name) => name.split(/[/()]/))
    .some((piece) => WATER.test(piece.trim()));
}

/** Brings free water, as such or inside a blend, a juice or a flower water. */
export function bringsWater(material: Composed): boolean {
  return material.composition.some((part) => isWaterName(part.inci));
}

/** An acid emulsifier or polymer that works only once neutralised: recorded so, or known by its INCI name. */
export function needsBase(material: Described & Pick<Material, 'needsNeutralising'>): boolean {
  if (material.needsNeutralising) return true;
  if (material.functions.includes('emulsifier') && isFattyAcid(material)) return true;
  return anyName(material, /^carbomer$/);
}

/** An emulsifier in the strict sense; a fatty alcohol recorded as co-emulsifier only is not one. */
export function isEmulsifier(material: Pick<Material, 'functions'>): boolean {
  return material.functions.includes('emulsifier');
}
