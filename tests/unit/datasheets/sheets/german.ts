import {
  beside,
  colons,
  footer,
  heading,
  prose,
  sampleFormula,
  stacked,
  table,
  title,
  twoColumns,
} from '../layouts';
import { most, one, part, range, whole, type InventedSheet } from './sheet';

const KONTAKT = footer(
  'Feldhaus Muster GmbH, Musterweg 5 – 7, 00000 Musterstadt, Telefon 0123 / 45 67-89, Stand 03.2031, Seite 1 von 2',
);

export const GERMAN: InventedSheet[] = [
  {
    name: 'Datenblatt mit zwei Spalten',
    content: [
      title('Technisches Datenblatt'),
      twoColumns(
        [
          ['Handelsname', 'Feldhaus Wachs 60'],
          ['INCI-Bezeichnung', 'Glyceryl Stearate (and) PEG-100 Stearate'],
          ['Aussehen', 'weiße bis elfenbeinfarbene Schuppen'],
          ['Säurezahl', '≤ 3,0 mg KOH/g'],
          ['Verseifungszahl', '90 – 100 mg KOH/g'],
          ['Schmelzbereich', '52 – 60 °C'],
          ['HLB-Wert', '11,0'],
          ['pH-Wert (10 %ig in Wasser)', '5,5 – 7,5'],
          ['Einsatzkonzentration', '1,5 – 6 %'],
          ['Haltbarkeit', '2 Jahre ab Herstellung'],
          ['Lagertemperatur', '5 bis 30 °C'],
        ],
        'ruled',
      ),
      KONTAKT,
    ],
    found: {
      tradeName: 'Feldhaus Wachs 60',
      composition: [part('Glyceryl Stearate', 0, 100), part('PEG-100 Stearate', 0, 100)],
      appearance: 'weiße bis elfenbeinfarbene Schuppen',
      form: 'flakes',
      'figures.acidValue': most(3),
      'figures.saponificationValue': range(90, 100),
      'figures.meltingPoint': range(52, 60),
      'figures.hlb': one(11),
      'usage.range': range(1.5, 6),
      'storage.shelfLifeMonths': 24,
      'storage.range': range(5, 30),
    },
    unsure: ['figures.phAsSupplied'],
  },
  {
    name: 'Kennzahlen mit Einheit und Prüfmethode',
    content: [
      title('FELDHAUS ESTER TN'),
      heading('Kenndaten'),
      table(
        [
          ['Kennzahl', 'Einheit', 'Spezifikation', 'Prüfmethode'],
          ['Säurezahl', 'mg KOH/g', 'max. 0,5', 'DIN EN ISO 2114'],
          ['Verseifungszahl', 'mg KOH/g', '325 – 345', 'DIN EN ISO 3681'],
          ['Jodzahl', 'g J2/100 g', 'max. 1,0', 'DGF C-V 11'],
          ['Dichte (20 °C)', 'g/cm³', '0,940 – 0,955', 'DIN 51757'],
          ['Viskosität (20 °C)', 'mPa·s', '25 – 33', 'DIN 53015'],
          ['Wassergehalt', '%', 'max. 0,1', 'DIN 51777'],
        ],
        [120, 80, 100, '*'],
      ),
      KONTAKT,
    ],
    found: {
      tradeName: 'FELDHAUS ESTER TN',
      'figures.acidValue': most(0.5),
      'figures.saponificationValue': range(325, 345),
      'figures.iodineValue': most(1),
      'figures.density': range(0.94, 0.955),
      'figures.viscosity': range(25, 33),
    },
  },
  {
    name: 'Fließtext mit Rahmenrezeptur',
    content: [
      title('Lindgrund Emulgator 12'),
      prose(
        'Lindgrund Emulgator 12 ist ein nichtionischer Emulgator mit einem HLB-Wert von 12 und wird aus 2 Pflanzen gewonnen.',
        'Die empfohlene Einsatzkonzentration liegt bei 2 bis 4 %. Der Schmelzpunkt beträgt etwa 60 °C. Die Ölphase wird auf 75 °C erhitzt.',
        'Kühl und trocken bei 10 – 25 °C lagern und vor Licht und Feuchtigkeit schützen. Im ungeöffneten Gebinde mindestens 18 Monate haltbar.',
      ),
      sampleFormula(
        'Rahmenrezeptur O/W-Creme',
        ['Phase', 'INCI', '%'],
        [
          ['A', 'Aqua', '70,0'],
          ['B', 'Squalane', '12,0'],
        ],
        ['pH-Wert: 5,5', 'Viskosität: 25000 mPa·s', 'Einsatzkonzentration: 8 – 9 %'],
      ),
    ],
    found: {
      tradeName: 'Lindgrund Emulgator 12',
      'figures.hlb': one(12),
      'usage.range': range(2, 4),
      'figures.meltingPoint': one(60),
      'storage.range': range(10, 25),
      'storage.keepFrom': ['light', 'moisture'],
      'storage.shelfLifeMonths': 18,
    },
  },
  {
    name: 'Zusammensetzung mit Anteilen',
    content: [
      title('Rohstoffspezifikation'),
      colons([['Produktname', 'Eichquell Blend 3']]),
      heading('Zusammensetzung'),
      table(
        [
          ['INCI', 'CAS-Nr.', 'Gehalt (%)'],
          ['Cetearyl Alcohol', '67762-27-0', '70 – 80'],
          ['Sodium Stearoyl Glutamate', '79811-24-8', '20 – 30'],
        ],
        ['*', 100, 100],
        'open',
      ),
      colons([
        ['Lieferform', 'Pastillen'],
        ['Säurezahl (mg KOH/g)', '10 – 20'],
      ]),
    ],
    found: {
      tradeName: 'Eichquell Blend 3',
      composition: [part('Cetearyl Alcohol', 70, 80), part('Sodium Stearoyl Glutamate', 20, 30)],
      casNumbers: '67762-27-0, 79811-24-8',
      form: 'pellets',
      'figures.acidValue': range(10, 20),
    },
  },
  {
    name: 'Sicherheitsdatenblatt mit Abschnitten',
    content: [
      title('Sicherheitsdatenblatt', 14),
      heading('1. Bezeichnung des Stoffs'),
      colons([['Produktidentifikator', 'Eichquell Säure 80']]),
      heading('2. Mögliche Gefahren'),
      colons([['Gefahrenhinweise', 'H315 Verursacht Hautreizungen. H318 Verursacht schwere Augenschäden.']]),
      heading('7. Handhabung und Lagerung'),
      colons([['Lagerbedingungen', 'Nicht über 30 °C. Behälter geschlossen halten.']]),
      heading('9. Physikalische und chemische Eigenschaften'),
      twoColumns([
        ['Aggregatzustand', 'flüssig'],
        ['pH-Wert', '< 1'],
        ['Siedepunkt', '122 °C'],
        ['Flammpunkt', '> 100 °C'],
        ['Relative Dichte', '1,2 g/cm³'],
        ['Schmelzpunkt', 'nicht bestimmt'],
      ]),
    ],
    found: {
      tradeName: 'Eichquell Säure 80',
      hazards: ['irritant'],
      'storage.range': most(30),
      form: 'liquid',
      'figures.phAsSupplied': most(1),
      'figures.density': one(1.2),
    },
  },
  {
    name: 'Untereinander stehende Angaben, zwei Spalten Fließtext',
    content: [
      title('Auenhof Jojobaöl'),
      stacked([
        ['INCI-Name', 'Simmondsia Chinensis Seed Oil'],
        ['CAS-Nummer', '61789-91-1'],
        ['Iodzahl', '80 – 90 g I2/100 g'],
      ]),
      beside(
        prose('Haltbarkeit nach dem Öffnen etwa 6 Monate, danach ist das Öl zu prüfen.'),
        prose('Vor Licht geschützt unter 20 °C lagern. Es wurden 3 Chargen geprüft.'),
      ),
    ],
    found: {
      tradeName: 'Auenhof Jojobaöl',
      composition: whole('Simmondsia Chinensis Seed Oil'),
      casNumbers: '61789-91-1',
      'figures.iodineValue': range(80, 90),
      'storage.afterOpeningMonths': 6,
      'storage.range': most(20),
      'storage.keepFrom': ['light'],
    },
  },
  {
    name: 'Mindest- und Höchstwerte, Werte über Seiten',
    content: [
      title('Spezifikation', 14),
      colons([['Produktbezeichnung', 'Auenhof Butter 35']]),
      table(
        [
          ['Merkmal', 'Min.', 'Max.', 'Einheit'],
          ['Verseifungszahl', '178', '198', 'mg KOH/g'],
          ['Jodzahl', '52', '66', 'g I2/100g'],
        ],
        [140, 60, 60, '*'],
      ),
      { text: '', pageBreak: 'after' },
      table(
        [
          ['Merkmal', 'Min.', 'Max.', 'Einheit'],
          ['Säurezahl', '', '2', 'mg KOH/g'],
          ['Schmelzpunkt', '28', '36', '°C'],
        ],
        [140, 60, 60, '*'],
      ),
    ],
    found: {
      tradeName: 'Auenhof Butter 35',
      'figures.saponificationValue': range(178, 198),
      'figures.iodineValue': range(52, 66),
      'figures.acidValue': most(2),
      'figures.meltingPoint': range(28, 36),
    },
  },
  {
    name: 'Angaben, die keine sind',
    content: [
      title('Auenhof Muster X'),
      twoColumns([
        ['HLB-Wert', 'k. A.'],
        ['Erforderlicher HLB-Wert', '8'],
        ['Dichte', '–'],
        ['Schmelzpunkt', 'siehe Analysenzertifikat'],
        ['Einsatzkonzentration', 'nach Bedarf'],
        ['Viskosität', 'Spindel 4, 20 U/min'],
        ['Telefon', '0123 45 – 67'],
        ['Gefahrenhinweise', 'Nicht als gefährlich eingestuft (kein H317).'],
        ['Chargennummer', '4711-08-15'],
        ['Säurezahl', '2 – 1 mg KOH/g'],
      ]),
    ],
    found: { tradeName: 'Auenhof Muster X' },
  },
];
