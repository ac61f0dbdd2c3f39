import { plain } from '../imports/plain';

/**
 * What data sheets call the things that are read from them, in English, German, French and Spanish. Words of the trade in
 * these languages, from memory; common practice, no source. Compared without case, accents, brackets and signs.
 */
const TEXTS: Readonly<Record<string, string>> = {
  tradeName: `
    trade name, product name, name of product, name of the product, commercial name, brand name, product identifier,
    handelsname, produktname, produktbezeichnung, artikelbezeichnung, handelsbezeichnung, produktidentifikator,
    nom commercial, nom du produit, denomination commerciale, identificateur de produit, designation commerciale,
    nombre comercial, nombre del producto, denominacion comercial, identificador del producto`,
  composition: `
    inci, inci name, inci names, inci designation, inci declaration, inci eu, inci ctfa, inci name eu, cosmetic name,
    inci bezeichnung, inci name bezeichnung, inci deklaration, inci benennung, nom inci, denomination inci,
    designation inci, nombre inci, denominacion inci`,
  casNumbers: `
    cas, cas no, cas number, cas numbers, cas nr, cas nummer, cas nummern, n cas, no cas, numero cas, numeros cas,
    cas registry number, cas nos, numero de cas, n de cas`,
  form: `
    form, physical form, physical state, state, delivery form, supply form, lieferform, form, aggregatzustand,
    physikalische form, forme, forme physique, etat physique, presentation, forma, forma fisica, estado fisico,
    presentacion`,
  appearance: `
    appearance, appearance at 20 c, description, visual appearance, aussehen, erscheinungsbild, ausseres, beschreibung,
    aspect, aspect visuel, apparence, aspecto, apariencia, aspecto visual`,
  'figures.hlb': `
    hlb, hlb value, hlb number, hydrophilic lipophilic balance, hlb wert, hlb zahl, valeur hlb, indice hlb, valor hlb,
    valor de hlb`,
  'figures.acidValue': `
    acid value, acid number, av, saurezahl, sz, indice d acide, indice d acidite, indice de acidez, numero de acido,
    valor acido, indice de acido`,
  'figures.saponificationValue': `
    saponification value, saponification number, sap value, sap number, verseifungszahl, vz, indice de saponification,
    indice de saponificacion, numero de saponificacion`,
  'figures.iodineValue': `
    iodine value, iodine number, iodzahl, jodzahl, iz, indice d iode, indice de yodo, numero de yodo, valor de yodo`,
  'figures.phAsSupplied': `ph, ph value, ph wert, valeur ph, valeur du ph, valor ph, valor de ph`,
  'figures.workingPh': `
    working ph, working ph range, ph range, ph range of use, ph of use, recommended ph, recommended ph range,
    ph stability, stable at ph, ph stability range, effective ph range, active at ph, application ph, ph bereich,
    anwendungs ph, ph einsatzbereich, ph stabilitat, wirksam bei ph, ph anwendungsbereich, stabil bei ph, plage de ph,
    ph d utilisation, plage de ph d utilisation, stabilite ph, rango de ph, ph de uso, intervalo de ph,
    rango de ph de uso, estabilidad ph, rango de ph recomendado`,
  'figures.meltingPoint': `
    melting point, melting range, melting temperature, drop point, dropping point, slip melting point,
    melting point range, melting point melting range, melting point freezing point, schmelzpunkt, schmelzbereich,
    tropfpunkt, schmelztemperatur, schmelzpunkt schmelzbereich, steigschmelzpunkt, point de fusion,
    point de goutte, intervalle de fusion, temperature de fusion, plage de fusion, point de fusion intervalle de fusion,
    punto de fusion, punto de gota, intervalo de fusion, temperatura de fusion, rango de fusion`,
  'figures.density': `
    density, relative density, specific gravity, dichte, relative dichte, spezifisches gewicht, densite,
    densite relative, masse volumique, densidad, densidad relativa, peso especifico`,
  'figures.viscosity': `
    viscosity, dynamic viscosity, viscosity dynamic, brookfield viscosity, viskositat, dynamische viskositat,
    viskositat dynamisch, viscosite, viscosite dynamique, viscosidad, viscosidad dinamica`,
  'usage.range': `
    use level, use levels, usage level, usage levels, usage, usage rate, recommended use, recommended use level,
    recommended use levels, recommended usage level, recommended usage, recommended dosage, recommended concentration,
    use concentration, usage concentration, recommended use concentration, dosage, dose, dosing, typical use level,
    typical usage level, einsatzkonzentration, empfohlene einsatzkonzentration, einsatzmenge, empfohlene einsatzmenge,
    dosierung, empfohlene dosierung, anwendungskonzentration, empfohlene anwendungskonzentration, dosierempfehlung,
    dose d emploi, dosage recommande, dose recommandee, dose d utilisation, concentration d utilisation,
    concentration recommandee, taux d utilisation, taux d incorporation, dosis, dosis recomendada, dosificacion,
    dosis de uso, concentracion de uso, concentracion recomendada, nivel de uso, dosificacion recomendada,
    nivel de uso recomendado, taux d emploi`,
  storage: `
    storage, storage conditions, storage condition, storage temperature, recommended storage temperature,
    storage and handling, handling and storage, store at, lagerung, lagerbedingungen, lagertemperatur,
    empfohlene lagertemperatur, lagerung und handhabung, handhabung und lagerung, lagerungsbedingungen, stockage,
    conditions de stockage, temperature de stockage, conservation, conditions de conservation, stockage et manipulation,
    temperature de conservation, almacenamiento, condiciones de almacenamiento, temperatura de almacenamiento,
    conservacion, condiciones de conservacion, almacenaje, storage advice, lagerhinweise`,
  'storage.shelfLifeMonths': `
    shelf life, shelf life unopened, minimum shelf life, retest period, retest date, best before, storage stability,
    shelf life storage, haltbarkeit, mindesthaltbarkeit, lagerstabilitat, haltbarkeit ungeoffnet, mindesthaltbarkeitsdauer,
    lagerfahigkeit, duree de conservation, duree de vie, dluo, duree de validite, ddm, vida util, caducidad,
    duracion de conservacion, periodo de validez`,
  'storage.afterOpeningMonths': `
    shelf life after opening, after opening, once opened, period after opening, pao, haltbarkeit nach dem offnen,
    nach dem offnen, haltbarkeit nach anbruch, nach anbruch, apres ouverture, duree apres ouverture,
    conservation apres ouverture, despues de abrir, tras la apertura, vida util despues de abrir, una vez abierto`,
  hazards: `
    hazards, hazard, hazard statements, hazard statement s, h statements, h phrases, gefahren, gefahrenhinweise,
    h satze, gefahrenhinweis, dangers, mentions de danger, mention de danger, phrases h, peligros,
    indicaciones de peligro, frases h, indicacion de peligro`,
};

/** What else data sheets tell of: it is passed over, and a value beside it belongs to it and to nothing else. */
const PASSED_OVER = `
  odour, odor, smell, taste, colour, color, gardner colour, apha colour, water content, water, moisture, moisture content,
  loss on drying, hydroxyl value, oh value, peroxide value, ester value, amine value, refractive index, flash point,
  boiling point, boiling range, cloud point, setting point, solidification point, congealing point, pour point, titre, ash,
  sulphated ash, solubility, solubility in water, required hlb, required hlb value, rhlb, ionicity, charge, nature, chemical
  name, chemical description, chemical nature, synonyms, origin, country of origin, supplier, manufacturer, producer,
  distributor, contact, telephone, phone, tel, fax, email, e mail, internet, web, address, emergency, emergency telephone,
  date, revision, version, issue date, revision date, valid from, page, item code, item number, product code, article number,
  article no, code, batch, lot, batch number, lot number, einecs, ec number, ec no, eg nummer, reach, reach no, tariff code,
  customs tariff number, hs code, packaging, pack size, packing, net weight, particle size, bulk density, tapped density,
  molar mass, molecular weight, active matter, active content, solids, dry matter, residue, purity, assay, heavy metals,
  lead, arsenic, total plate count, total viable count, yeasts and moulds, microbiology, pathogens, function, functions,
  application, applications, benefits, properties, surface tension, vapour pressure, evaporation rate, conductivity,
  ignition temperature, autoignition temperature, geruch, farbe, wassergehalt, hydroxylzahl, peroxidzahl, esterzahl, aminzahl,
  brechungsindex, flammpunkt, siedepunkt, siedebereich, trubungspunkt, erstarrungspunkt, stockpunkt, asche, loslichkeit,
  erforderlicher hlb, erforderlicher hlb wert, ionogenitat, chemische bezeichnung, synonyme, herkunft, ursprung, lieferant,
  hersteller, telefon, ansprechpartner, datum, stand, uberarbeitet, artikelnummer, artikel nr, charge, chargennummer,
  zolltarifnummer, verpackung, gebinde, gebindegrosse, korngrosse, schuttdichte, molmasse, wirkstoffgehalt, trockensubstanz,
  reinheit, gehalt, schwermetalle, gesamtkeimzahl, funktion, anwendung, trockenverlust, zundtemperatur, odeur, couleur,
  teneur en eau, indice d hydroxyle, indice de peroxyde, indice d ester, indice de refraction, point d eclair,
  point d ebullition, point de trouble, point de solidification, cendres, solubilite, hlb requis, caractere ionique,
  nom chimique, synonymes, origine, fournisseur, fabricant, telephone, reference, lot, emballage, conditionnement,
  granulometrie, densite apparente, masse molaire, matiere active, extrait sec, purete, metaux lourds, fonction, application,
  perte a la dessiccation, olor, color, contenido de agua, indice de hidroxilo, indice de peroxidos, indice de refraccion,
  punto de inflamacion, punto de ebullicion, punto de turbidez, punto de solidificacion, cenizas, solubilidad, hlb requerido,
  caracter ionico, nombre quimico, sinonimos, origen, proveedor, fabricante, telefono, codigo, lote, envase, granulometria,
  densidad aparente, masa molar, materia activa, extracto seco, pureza, metales pesados, funcion, aplicacion,
  perdida por secado, fecha, date d emission, date de revision, humedad, humidite, schuttgewicht`;

const listed = (text: string): string[] => text.split(',').map((word) => word.replace(/\s+/g, ' ').trim());

/** Spellings by what they name; null for what is passed over. */
export const LABELS: ReadonlyMap<string, string | null> = new Map([
  ...listed(PASSED_OVER).map((word): [string, null] => [plain(word), null]),
  ...Object.entries(TEXTS).flatMap(([key, text]) =>
    listed(text).map((word): [string, string] => [plain(word), key]),
  ),
]);

/** So many letters has the longest label. */
export const LONGEST_LABEL = 90;
