/** Words parted by commas, over several lines. */
export const listed = (text: string): string[] =>
  text
    .split(',')
    .map((word) => word.replace(/\s+/g, ' ').trim())
    .filter((word) => word !== '');

/**
 * What columns of raw materials are called in makers' spreadsheets, by what they fill: English, German, French, Spanish,
 * Italian. Words of the trade in these languages, from memory; common practice, no source. Compared without case,
 * accents, units, brackets and signs.
 */
const TEXTS: Readonly<Record<string, string>> = {
  tradeName: `
    name, trade name, product, product name, raw material, raw material name, material, material name,
    ingredient, commercial name, brand name, description, handelsname, bezeichnung, rohstoff, rohstoffname,
    produkt, produktname, artikelbezeichnung, rohstoffbezeichnung, material bezeichnung, nom commercial,
    matiere premiere, produit, nom, nom du produit, designation, nombre comercial, materia prima, producto,
    nombre, nombre del producto, nome commerciale, materia prima nome, prodotto, nome`,
  code: `
    code, item, our code, internal code, raw material code, material code, number, no, nr, id, sku, rm code,
    material no, article no, article number, artikelnummer, artikelnr, artikel nr, art nr, rohstoffnummer,
    rohstoffnr, rohstoff nr, interne nummer, nummer, materialnummer, kurzel, code interne, reference, ref,
    numero, code mp, codigo, codigo interno, referencia, codice, codice interno, riferimento`,
  status: `status, state, zustand, statut, etat, estado, stato`,
  composition: `
    inci, inci name, inci names, inci designation, inci bezeichnung, nom inci, nombre inci, nome inci,
    denominacion inci, composition inci, ingredients inci, inhaltsstoffe, inci deklaration, composition,
    zusammensetzung, composicion, composizione`,
  'composition.share': `
    share, inci share, percent inci, inci percent, content, part, proportion, concentration in material, share
    of material, anteil, gehalt, inci anteil, teneur, part inci, pourcentage, contenido, porcentaje,
    contenuto, percentuale`,
  charge: `
    charge, ionic charge, ionicity, ionic character, ionic nature, ladung, ionogenitat, ionischer charakter,
    ionizitat, charge ionique, caractere ionique, ionicite, carga, caracter ionico, ionicidad, carica,
    carattere ionico`,
  architecture: `architecture, type of emulsifier, emulsifier class, emulgatorart, architecture de l emulsifiant`,
  emulsionType: `
    emulsion type, emulsion, type of emulsion, serves, emulsionstyp, emulsionsart, emulsionstypen, type d
    emulsion, tipo de emulsion, tipo di emulsione`,
  functions: `
    function, functions, use, application, category, purpose, funktion, funktionen, einsatz, kategorie,
    verwendung, fonction, fonctions, categorie, funcion, funciones, categoria, funzione, funzioni`,
  phaseOfUse: `phase, usual phase, phase of use, einsatzphase, fase, phase d utilisation`,
  form: `
    form, physical form, physical state, lieferform, aggregatzustand, darreichungsform, forme, etat physique,
    forme physique, forma, estado fisico, forma fisica, stato fisico`,
  consistency: `consistency, texture, konsistenz, consistance, consistencia, consistenza`,
  appearance: `appearance, aspect, colour, color, aussehen, farbe, erscheinungsbild, aspecto, couleur, aspetto, colore`,
  origin: `origin, source, herkunft, ursprung, origine, origen, provenienza`,
  countryOfOrigin: `
    country, country of origin, land, herkunftsland, ursprungsland, pays, pays d origine, pais, pais de
    origen, paese, paese di origine`,
  certifiedOrganic: `organic, certified organic, bio, biologique, bio zertifiziert, zertifiziert bio, ecologico, biologico`,
  coldProcessable: `
    cold process, cold processable, works cold, kaltverarbeitbar, kalt verarbeitbar, process a froid, a froid,
    en frio, a freddo`,
  needsNeutralising: `needs neutralising, neutralise, neutralisieren, a neutraliser, neutralizar, neutralizzare`,
  electrolyteTolerance: `
    electrolyte tolerance, salt tolerance, elektrolyttoleranz, elektrolytvertraglichkeit, tolerance aux
    electrolytes, tolerancia a electrolitos, tolleranza agli elettroliti`,
  solubleIn: `
    solubility, soluble in, loslichkeit, loslich in, solubilite, soluble dans, solubilidad, soluble en,
    solubilita`,
  'usage.minPpm': `
    usage min, min use, minimum use, use from, dosage min, usage from, dosierung min, einsatz min,
    einsatzkonzentration min, einsatzmenge min, einsatz von, dosierung von, dose min, dosis min, dosaggio min`,
  'usage.range': `
    usage, use level, use levels, recommended use, recommended use level, dosage, dosierung, einsatzkonzentration,
    einsatzmenge, dosis, dose d emploi, dosage recommande, dosaggio, dosificacion`,
  'usage.typicalPpm': `usage typical, typical use, typical usage, typische dosierung, dose typique, dosis tipica`,
  'usage.maxPpm': `
    usage max, max use, maximum use, use to, dosage max, usage to, maximum, dosierung max, einsatz max,
    einsatzkonzentration max, einsatzmenge max, einsatz bis, dosierung bis, dose max, dosis max, dosaggio max`,
  'figures.hlb': `hlb, hlb value, hlb wert, valeur hlb, valor hlb, valore hlb`,
  'figures.requiredHlbOw': `required hlb, rhlb, required hlb o w, erforderlicher hlb, hlb requis, hlb requerido, hlb richiesto`,
  'figures.meltingPoint': `
    melting point, melting range, drop point, mp, schmelzpunkt, schmelzbereich, tropfpunkt, point de fusion,
    punto de fusion, punto di fusione`,
  'figures.density': `density, specific gravity, dichte, densite, masse volumique, densidad, densita`,
  'figures.phAsSupplied': `ph, ph value, ph wert, valeur ph, valor ph, ph as supplied`,
  'figures.workingPh': `working ph, ph range, ph stability, ph bereich, ph stabilitat, plage de ph, rango de ph, intervallo ph`,
  'figures.acidValue': `acid value, acid number, saurezahl, sz, indice d acide, indice de acidez, numero di acidita`,
  'figures.saponificationValue': `
    saponification value, sap value, saponification number, verseifungszahl, vz, indice de saponification,
    indice de saponificacion, numero di saponificazione`,
  'figures.iodineValue': `iodine value, iodine number, jodzahl, iodzahl, indice d iode, indice de yodo, numero di iodio`,
  'figures.viscosity': `viscosity, dynamic viscosity, viskositat, viscosite, viscosidad, viscosita`,
  casNumbers: `
    cas, cas no, cas number, cas numbers, cas nr, cas nummer, n cas, numero cas, no cas`,
  'figures.molarMass': `
    molar mass, molecular weight, mw, molmasse, molekulargewicht, masse molaire, peso molecular, peso
    molecolare`,
  'figures.activePercent': `
    active matter, active content, actives, wirkstoffgehalt, aktivsubstanz, was, matiere active, materia
    activa, materia attiva`,
  'figures.naturalOriginIndex': `
    natural origin index, noi, iso 16128, naturlichkeitsindex, indice d origine naturelle, indice de origen
    natural, indice di origine naturale`,
  'figures.maxTemperature': `
    max temperature, maximum temperature, highest temperature, maximaltemperatur, temperature max, temperatura
    max`,
  'storage.range': `
    storage temperature, lagertemperatur, lagerung, temperature de stockage, stockage, temperatura de almacenamiento,
    temperatura di conservazione`,
  'storage.minC': `storage min, store above, lagerung min, lagertemperatur min, stockage min`,
  'storage.maxC': `
    storage max, store below, lagerung max, lagertemperatur max, stockage max`,
  'storage.keepFrom': `keep from, protect from, schutzen vor, proteger de, a l abri de, proteggere da`,
  'storage.shelfLifeMonths': `
    shelf life, minimum shelf life, haltbarkeit, mindesthaltbarkeit, mhd, duree de vie, dluo, vida util,
    caducidad, durata, shelf life months`,
  'storage.afterOpeningMonths': `after opening, pao, nach dem offnen, nach offnung, apres ouverture, despues de abrir, dopo l apertura`,
  hazards: `hazards, hazard, gefahren, gefahr, gefahrenhinweise, dangers, danger, peligros, pericoli`,
  handling: `
    handling, precautions, handhabung, vorsichtsmassnahmen, manipulation, precautions d emploi, manipulacion,
    manipolazione`,
  'legalLimit.ppm': `legal limit, maximum by law, hochstmenge, gesetzliche hochstmenge, limite legale, limite legal`,
  'legalLimit.note': `limit applies to, hochstmenge gilt fur`,
  'legalLimit.source': `source of the limit, limit source, rechtsgrundlage, base legale, base legal`,
  allergens: `allergens, fragrance allergens, allergene, duftstoffallergene, allergenes, alergenos, allergeni`,
  'offer.supplier': `
    supplier, manufacturer, vendor, producer, lieferant, hersteller, bezugsquelle, fournisseur, fabricant,
    proveedor, fabricante, fornitore, produttore`,
  'offer.itemCode': `
    supplier code, item code, supplier item, order number, bestellnummer, bestell nr, lieferantennummer,
    lieferanten artikelnummer, reference fournisseur, codigo proveedor, codice fornitore`,
  'offer.pack': `
    pack, pack size, package, container, gebinde, gebindegrosse, packung, packungsgrosse, conditionnement,
    emballage, envase, confezione`,
  'offer.price': `price, pack price, price of pack, preis, gebindepreis, packungspreis, prix, precio, prezzo`,
  'offer.pricePerKg': `
    price per kg, price kg, cost per kg, eur kg, usd kg, gbp kg, chf kg, kilopreis, preis je kg, preis pro kg,
    preis kg, kg preis, prix au kg, prix kg, prix par kg, precio por kg, precio kg, prezzo al kg, prezzo kg`,
  'offer.currency': `currency, wahrung, devise, moneda, valuta`,
  'offer.date': `price date, date, as of, preisdatum, datum, stand, preis vom, date du prix, fecha, data`,
  notes: `
    notes, note, remarks, remark, comments, comment, bemerkung, bemerkungen, anmerkung, anmerkungen, notiz,
    notizen, kommentar, remarque, remarques, commentaire, observaciones, notas, osservazioni, note interne`,
};

/** The same as lists, by what the columns fill. */
export const HEADINGS: Readonly<Record<string, readonly string[]>> = Object.fromEntries(
  Object.entries(TEXTS).map(([key, text]) => [key, listed(text)]),
);
