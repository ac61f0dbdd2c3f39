/** The words that generated libraries are made of: real INCI names, invented trade names and suppliers. */
export const PLANTS = [
  'Aloe Barbadensis Leaf Juice',
  'Camellia Sinensis Leaf Extract',
  'Calendula Officinalis Flower Extract',
  'Chamomilla Recutita Flower Extract',
  'Rosmarinus Officinalis Leaf Extract',
  'Centella Asiatica Extract',
  'Glycyrrhiza Glabra Root Extract',
  'Hamamelis Virginiana Leaf Water',
  'Lavandula Angustifolia Oil',
  'Citrus Limon Peel Oil',
  'Rosa Damascena Flower Water',
  'Avena Sativa Kernel Extract',
  'Cucumis Sativus Fruit Extract',
  'Punica Granatum Fruit Extract',
  'Vitis Vinifera Seed Extract',
  'Hypericum Perforatum Extract',
  'Althaea Officinalis Root Extract',
  'Salvia Officinalis Leaf Extract',
];

export const OILS = [
  'Caprylic/Capric Triglyceride',
  'Prunus Amygdalus Dulcis Oil',
  'Helianthus Annuus Seed Oil',
  'Simmondsia Chinensis Seed Oil',
  'Olea Europaea Fruit Oil',
  'Paraffinum Liquidum',
  'Isopropyl Myristate',
  'Isopropyl Palmitate',
  'Ethylhexyl Palmitate',
  'Cetearyl Isononanoate',
  'Coco-Caprylate/Caprate',
  'Decyl Oleate',
  'Dimethicone',
  'Cyclopentasiloxane',
  'Squalane',
  'Octyldodecanol',
  'Dicaprylyl Ether',
  'Ricinus Communis Seed Oil',
  'Argania Spinosa Kernel Oil',
  'Rosa Canina Fruit Oil',
];

export const SHELF_NOTES =
  'stir slowly until clear avoid long heating batch smells nutty sample from fair ask for new certificate colour darkens after opening works well with gel cream trial skin feel dry soft rich tacky replaces older grade minimum order high lead time weeks melts late add before homogenising pearl effect below stored cold room shelf three check odour before use good spread whitening on rubbing needs pH adjusting supplier confirms palm free reorder in spring viscosity drops at low shear students like it class demonstration standard'.split(
    ' ',
  );

/** Invented syllables, so that trade names and suppliers are nobody's. */
export const STEMS =
  'Vel Lind Mar Orb Tes Quil Bram Fen Hal Isk Jun Kest Lor Mond Nev Osk Pell Rav Sorn Tarn Ulm Wex Yar Zell Dov Cal Eld Gris'.split(
    ' ',
  );
export const ENDS =
  'mora enwax amide isol ester acare oderm uline avel osoft ipure agel opol acell emul efine orich alba umin exa'.split(
    ' ',
  );
export const HOUSES =
  'Works House Mills & Daughters Trading Botanicals Chemie Naturals Labs Supply Ölmühle Specialités'.split(
    ' ',
  );
