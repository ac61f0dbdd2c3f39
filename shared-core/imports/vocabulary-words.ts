type Words = Readonly<Record<string, string>>;

/** What stands for yes and for no in a cell. */
export const YES_WORDS: readonly string[] = 'yes,y,x,true,1,ja,j,oui,o,si,s,vrai,wahr,✓,✔'.split(',');
export const NO_WORDS: readonly string[] = 'no,n,false,0,-,–,nein,non,faux,falsch'.split(',');

/**
 * What a maker's table may call the words of our vocabularies, by target: English, German, French, Spanish, Italian,
 * with the usual shortenings, parted by commas. From memory; common practice, no source. Compared without case, accents
 * and signs. A word that stands for two of ours is left out: a wrong word is worse than none.
 */
export const VOCABULARY_WORDS: Readonly<Record<string, Words>> = {
  charge: {
    anionic: `
      anionic, anion, anion active, anionisch, anionaktiv, anionique, anionico, anionica, negative, negativ,
      an`,
    cationic: `
      cationic, cation, cation active, kationisch, kationaktiv, cationique, cationico, cationica, kation,
      positive, positiv, cat`,
    'non-ionic': `
      non ionic, nonionic, nonion, non ion, nichtionisch, nicht ionisch, nichtionogen, nichtion, non ionique,
      nonionique, no ionico, non ionico, nonionico, neutral, ni, uncharged`,
    amphoteric: `amphoteric, zwitterionic, amphoter, ampho, amphotere, anfotero, anfotera, zwitterionisch, betaine`,
  },
  architecture: {
    classic: `classic, klassisch, classique, clasico, classico`,
    polymeric: `polymeric, polymer, polymerisch, polymere, polimerico`,
    particulate: `particulate, pickering, partikel, particulaire, particulado`,
  },
  emulsionType: {
    'o/w': `o w, ow, oil in water, ol in wasser, o w emulgator, h e, huile dans eau, aceite en agua, olio in acqua`,
    'w/o': `w o, wo, water in oil, wasser in ol, e h, eau dans huile, agua en aceite, acqua in olio`,
    both: `both, o w and w o, o w w o, w o o w, beide, les deux, ambos, entrambi, o w und w o`,
  },
  functions: {
    emulsifier: `emulsifier, emulgator, emulsifiant, emulsionante, emulsifying`,
    'co-emulsifier': `co emulsifier, coemulsifier, coemulgator, co emulgator, co emulsifiant, coemulsifiant, coemulsionante`,
    emollient: `emollient, oil, emolliens, ol, weichmacher, huile, emoliente, aceite, emolliente, olio`,
    humectant: `
      humectant, moisturiser, moisturizer, feuchthaltemittel, feuchtigkeitsspender, hydratant, humectante,
      umettante`,
    thickener: `
      thickener, rheology modifier, gelling agent, verdicker, verdickungsmittel, gelbildner, konsistenzgeber,
      epaississant, gelifiant, espesante, addensante`,
    preservative: `preservative, konservierer, konservierungsmittel, konservierungsstoff, conservateur, conservante`,
    'preservative booster': `preservative booster, booster, konservierungsverstarker`,
    chelator: `chelator, chelating agent, chelant, komplexbildner, chelatbildner, chelateur, quelante, chelante`,
    acid: `acid, saure, acide, acido, ph adjuster acid`,
    base: `base, alkali, lauge, alcali`,
    active: `active, active ingredient, wirkstoff, actif, activo, attivo, principe actif`,
    antioxidant: `antioxidant, antioxidans, antioxidationsmittel, antioxydant, antioxidante, antiossidante`,
    fragrance: `
      fragrance, perfume, parfum, duftstoff, duft, atherisches ol, essential oil, perfumante, fragancia,
      profumo, huile essentielle`,
    colorant: `colorant, pigment, dye, farbstoff, farbmittel, colorante, pigmento`,
    solvent: `solvent, losemittel, losungsmittel, solvant, disolvente, solvente`,
    surfactant: `surfactant, tensid, tenside, detergent, tensioactif, tensioactivo, tensioattivo, waschaktive substanz`,
    'conditioning agent': `conditioning agent, conditioner, konditionierer, conditionneur, acondicionador, condizionante`,
    'film former': `film former, filmbildner, filmogene, formador de pelicula, filmogeno`,
    opacifier: `opacifier, trubungsmittel, opacifiant, opacificante`,
    'uv filter': `uv filter, sunscreen, uvfilter, lichtschutzfilter, filtre uv, filtro uv, filtro solar`,
    electrolyte: `electrolyte, salt, elektrolyt, salz, sel, electrolito, sal, elettrolita, sale`,
  },
  phaseOfUse: {
    oil: `
      oil, oil phase, fettphase, olphase, ol, fett, phase grasse, phase huileuse, huile, fase oleosa, aceite,
      olio, fase grassa`,
    water: `water, water phase, wasserphase, wasser, phase aqueuse, eau, fase acuosa, agua, fase acquosa, acqua`,
    'cool-down': `
      cool down, cooldown, cooling phase, abkuhlphase, kuhlphase, kaltphase, phase froide, refroidissement,
      fase fria, enfriamiento, raffreddamento`,
    any: `any, all, beliebig, alle, toutes, cualquiera, qualsiasi`,
  },
  form: {
    pellets: `pellets, pellet, pastilles, pastillen, pastille, perlitas, pastiglie`,
    flakes: `flakes, flake, schuppen, flocken, ecailles, paillettes, escamas, scaglie`,
    beads: `beads, pearls, perlen, prills, perles, perlas, perle`,
    powder: `powder, pulver, poudre, polvo, polvere, pulvrig, pulverformig`,
    granules: `granules, granulat, granulate, granulos, granuli`,
    paste: `paste, pasty, pastos, pate, pasta, pastoso`,
    liquid: `liquid, flussig, flussigkeit, fluid, liquide, liquido`,
    'viscous liquid': `
      viscous liquid, viscous, viskos, zahflussig, viskose flussigkeit, liquide visqueux, visqueux, liquido
      viscoso, viscoso`,
    block: `block, solid block, bloc, bloque, blocco`,
  },
  consistency: {
    waxy: `waxy, wachsartig, wachsig, cireux, ceroso`,
    oily: `oily, olig, huileux, aceitoso, oleoso`,
    watery: `watery, wassrig, aqueux, acuoso, acquoso`,
    resinous: `resinous, harzig, resineux, resinoso`,
  },
  origin: {
    natural: `natural, naturlich, naturel, naturale, plant, vegetable, pflanzlich, vegetal, vegetale`,
    'naturally derived': `
      naturally derived, nature derived, natural derived, naturnah, naturlichen ursprungs, d origine
      naturelle, origine naturelle, de origen natural, di origine naturale`,
    mineral: `mineral, mineralisch, minerale`,
    synthetic: `synthetic, petrochemical, synthetisch, synthetique, sintetico, sintetica`,
  },
  status: {
    'in use': `in use, active, aktiv, in verwendung, actif, activo, attivo, en uso, in uso`,
    'on trial': `on trial, trial, test, muster, versuch, essai, prueba, prova`,
    archived: `archived, inactive, discontinued, inaktiv, archiviert, ausgelaufen, archive, inactif, inactivo, inattivo`,
  },
  electrolyteTolerance: {
    low: `low, gering, niedrig, faible, bajo, baja, basso, bassa`,
    moderate: `moderate, medium, mittel, massig, moyenne, moyen, medio, media`,
    high: `high, hoch, elevee, eleve, forte, alto, alta`,
  },
  body: {
    none: `none, keine, kein, aucun, ninguno, nessuno`,
    some: `some, etwas, un peu, algo, poco`,
    strong: `strong, stark, fort, fuerte, forte`,
  },
  solubleIn: {
    water: `water, water soluble, wasser, wasserloslich, eau, hydrosoluble, agua, acqua, idrosolubile`,
    'hot water': `hot water, heisses wasser, eau chaude, agua caliente, acqua calda`,
    oil: `oil, oil soluble, ol, olloslich, huile, liposoluble, aceite, olio, liposolubile, fettloslich`,
    'hot oil': `hot oil, heisses ol, huile chaude, aceite caliente, olio caldo`,
    ethanol: `ethanol, alcohol, alkohol, alcool, etanol, etanolo`,
    glycols: `glycols, glycol, glykole, glykol, glicoles, glicoli`,
    'disperses in water': `
      disperses in water, water dispersible, wasserdispergierbar, dispersible dans l eau, dispersable en agua,
      disperdibile in acqua`,
    'disperses in oil': `
      disperses in oil, oil dispersible, oldispergierbar, dispersible dans l huile, dispersable en aceite,
      disperdibile in olio`,
    insoluble: `insoluble, unloslich, insolubile`,
  },
  'storage.keepFrom': {
    light: `light, sunlight, licht, sonnenlicht, lumiere, luz, luce`,
    moisture: `moisture, humidity, feuchtigkeit, feuchte, nasse, humidite, humedad, umidita`,
    frost: `frost, freezing, gel, kalte, congelacion, gelo`,
    air: `air, oxygen, luft, sauerstoff, aire, aria`,
    heat: `heat, hitze, warme, chaleur, calor, calore`,
  },
  hazards: {
    caustic: `caustic, corrosive, atzend, corrosif, corrosivo, caustico`,
    'strong acid': `strong acid, starke saure, acide fort, acido fuerte, acido forte`,
    'fine dust': `fine dust, dust, feinstaub, staub, poussiere, polvo fino, polvere fine`,
    flammable: `flammable, entzundlich, entzundbar, inflammable, inflamable, infiammabile`,
    sensitiser: `sensitiser, sensitizer, sensibilisierend, sensibilisant, sensibilizante, sensibilizzante`,
    irritant: `irritant, reizend, irritante`,
    'harmful undiluted': `harmful undiluted, harmful, gesundheitsschadlich, nocif, nocivo`,
    oxidiser: `oxidiser, oxidizer, brandfordernd, oxidierend, comburant, oxidante, comburente, ossidante`,
  },
};
