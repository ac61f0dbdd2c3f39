import { plain } from '../imports/plain';
import { labelOf } from './find-label';
import type { Line } from './lines';

/** Parts of a sheet that speak of something else than the material: sample formulas, other products, addresses. */
const ELSEWHERE = new RegExp(
  [
    '^(an? )?((suggested|typical|proposed|prototype|basic) )?(example|sample|guide|guideline|guiding|starting|suggested|indicative|prototype|model|frame|typical)? ?(formula|formulas|formulations?|recipes?)( (example|proposal|suggestion|idea|guide)s?)?( .*)?$',
    '^(formulation|formula|recipe) (examples?|ideas?|proposals?|suggestions?|guidelines?|tips?)( .*)?$',
    '^(rahmen|richt|beispiel|muster|start)(rezepturen|rezeptur|formulierung|formel)(en)?( .*)?$',
    '^(rezeptur|formulierungs|formel)(beispiel|vorschlag|vorschlage|idee|empfehlung)(e|en)?( .*)?$',
    '^rezeptur(en)?( .*)?$',
    '^(exemples? de |idees? de )?(formule|formules|formulation|recette)( (indicative|type|exemple|de base|cadre|de depart))?( .*)?$',
    '^(ejemplos? de )?(formula|formulas|formulacion|receta)( (orientativa|tipo|ejemplo|base|marco|de partida))?( .*)?$',
    '^(comparison|compared|comparative|vergleich|comparaison|comparacion|comparativa)( .*)?$',
    '^(other|related|similar|further|complementary|alternative) (products?|grades?|materials?)( .*)?$',
    '^(weitere|ahnliche|verwandte|andere) produkte( .*)?$',
    '^(autres|produits) (produits|similaires|associes|complementaires)( .*)?$',
    '^(otros|productos) (productos|relacionados|similares|complementarios)( .*)?$',
    '^(recommended |suggested |possible )?(partners?|combinations?|co emulsifiers?|kombinationspartner|partenaires?)( .*)?$',
    '^(contact|kontakt|contacto|disclaimer|haftungsausschluss|revision history|anderungshistorie)( .*)?$',
    '^(application|stability|performance|efficacy) (test|tests|study|studies|results?)( .*)?$',
    '^(anwendungs|stabilitats|wirksamkeits)(test|tests|studie|prufung)( .*)?$',
  ].join('|'),
);

/** Parts that speak of the material again. */
const OF_THE_MATERIAL = new RegExp(
  '^(section |abschnitt |rubrique |seccion )?(\\d+ )*(' +
    [
      'technical|typical|physical|physico|chemical|key|general|product|analytical|quality|sales',
      'technische|typische|physikalische|physikalisch|chemische|allgemeine|kenndaten|kennzahlen|produktdaten|analytische',
      'caracteristiques|proprietes|donnees|specifications?|spezifikation(en)?|especificacion(es)?',
      'propiedades|caracteristicas|datos|composition|zusammensetzung|composicion|identification|identitat|identificacion',
      'storage|lagerung|stockage|conservation|almacenamiento|handling|handhabung|manipulation|manipulacion|shelf life|haltbarkeit',
      'usage|use|dosage|dosierung|einsatz|anwendung(shinweise)?|utilisation|dosificacion|uso|safety|sicherheit|securite|seguridad',
      'regulatory|hazards?|gefahren|dangers?|peligros?',
    ].join('|') +
    ')( |$)',
);

/** Few words that stand alone on a line, as a heading does; null where they are a sentence, or a label with its value. */
function headingOf(line: Line): string | null {
  const [only, ...others] = line.cells;
  if (!only || others.length > 0 || only.text.length > 70) return null;
  if (/[.;,]$/.test(only.text)) return null;
  return plain(only.text.replace(/^\d+(\.\d+)*\.?\s+/, ''));
}

/** The height of most letters of a document: headings are set larger. */
export function bodyHeight(lines: readonly Line[]): number {
  const seen = new Map<number, number>();
  for (const { cells } of lines)
    for (const { height, text } of cells) {
      const rounded = Math.round(height * 2) / 2;
      seen.set(rounded, (seen.get(rounded) ?? 0) + text.length);
    }
  return [...seen].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 10;
}

/** The lines that speak of the material: without sample formulas, tables of other products, contacts. */
export function ofTheMaterial(lines: readonly Line[]): Line[] {
  const body = bodyHeight(lines);
  let outside: number | null = null;
  return lines.filter((line) => {
    const heading = headingOf(line);
    const height = line.cells[0]?.height ?? 0;
    if (heading !== null && heading !== '') {
      const { text } = line.cells[0]!;
      if (ELSEWHERE.test(heading) && !labelOf(text)) outside = height;
      else if (outside !== null && !/:\s*\S/.test(text) && closes(heading, height, outside, body))
        outside = null;
    }
    return outside === null;
  });
}

function closes(heading: string, height: number, outside: number, body: number): boolean {
  const large = height > body * 1.08 && height >= outside - 0.3;
  // Set as the text is: only what is known to be a heading ends it.
  return large
    ? !/^(phase|teil|fase)\b/.test(heading)
    : outside <= body * 1.08 && OF_THE_MATERIAL.test(heading);
}
