import { beside, colons, heading, prose, sampleFormula, stacked, table, title, twoColumns } from '../layouts';
import { most, one, part, range, whole, within, type InventedSheet } from './sheet';

export const SPANISH: InventedSheet[] = [
  {
    name: 'ficha técnica en dos columnas',
    content: [
      title('Ficha técnica'),
      twoColumns([
        ['Nombre comercial', 'Altamora Cera 50'],
        ['Nombre INCI', 'Polyglyceryl-3 Stearate'],
        ['Aspecto', 'escamas blancas'],
        ['Valor HLB', '9,0'],
        ['Índice de acidez', 'máx. 5 mg KOH/g'],
        ['Índice de saponificación', '120 – 140 mg KOH/g'],
        ['Índice de yodo', '2 g I2/100 g'],
        ['Punto de fusión', '50 – 56 °C'],
        ['Dosis recomendada', '2 – 4 %'],
        ['Temperatura de almacenamiento', '5 – 30 °C'],
        ['Vida útil', '36 meses'],
      ]),
    ],
    found: {
      tradeName: 'Altamora Cera 50',
      composition: whole('Polyglyceryl-3 Stearate'),
      appearance: 'escamas blancas',
      form: 'flakes',
      'figures.hlb': one(9),
      'figures.acidValue': most(5),
      'figures.saponificationValue': range(120, 140),
      'figures.iodineValue': one(2),
      'figures.meltingPoint': range(50, 56),
      'usage.range': range(2, 4),
      'storage.range': range(5, 30),
      'storage.shelfLifeMonths': 36,
    },
  },
  {
    name: 'especificaciones con mínimo, máximo y método',
    content: [
      title('ALTAMORA ACEITE V'),
      table(
        [
          ['Parámetro', 'Unidad', 'Mínimo', 'Máximo', 'Método'],
          ['Índice de acidez', 'mg KOH/g', '', '1,0', 'ISO 660'],
          ['Índice de saponificación', 'mg KOH/g', '185', '198', 'ISO 3657'],
          ['Densidad (20 °C)', 'g/cm³', '0,912', '0,922', 'ISO 6883'],
          ['Índice de peróxidos', 'meq/kg', '', '10', 'ISO 3960'],
        ],
        [150, 70, 60, 60, '*'],
      ),
    ],
    found: {
      tradeName: 'ALTAMORA ACEITE V',
      'figures.acidValue': most(1),
      'figures.saponificationValue': range(185, 198),
      'figures.density': range(0.912, 0.922),
    },
  },
  {
    name: 'texto corrido y fórmula orientativa',
    content: [
      title('Serranía Activo 7'),
      prose(
        'La dosis recomendada es de 1 a 3 %. La densidad es de 1,05 g/ml a 20 °C. Se calienta la fase acuosa a 70 °C.',
        'Almacenar en un lugar fresco y seco, protegido de la luz, entre 15 y 25 °C. Se conserva 12 meses sin abrir.',
      ),
      sampleFormula(
        'Fórmula orientativa',
        ['Fase', 'INCI', '%'],
        [
          ['A', 'Aqua', '80,0'],
          ['B', 'Niacinamide', '4,0'],
        ],
        ['pH: 6,0', 'Densidad: 0,99 g/ml', 'Dosis: 5 – 8 %'],
      ),
    ],
    found: {
      tradeName: 'Serranía Activo 7',
      'usage.range': range(1, 3),
      'figures.density': one(1.05),
      'storage.range': range(15, 25),
      'storage.keepFrom': ['light'],
      'storage.shelfLifeMonths': 12,
    },
  },
  {
    name: 'composición en tabla y etiquetas encima',
    content: [
      title('Serranía Mezcla 2'),
      table(
        [
          ['INCI', 'Nº CAS', 'Contenido (%)'],
          ['Glycerin', '56-81-5', '60'],
          ['Citric Acid', '77-92-9', '40'],
        ],
        ['*', 100, 100],
      ),
      stacked([
        ['Estado físico', 'líquido'],
        ['Viscosidad (25 °C)', '80 – 120 mPa·s'],
      ]),
    ],
    found: {
      tradeName: 'Serranía Mezcla 2',
      composition: [part('Glycerin', 60), part('Citric Acid', 40)],
      casNumbers: '56-81-5, 77-92-9',
      form: 'liquid',
      'figures.viscosity': range(80, 120),
    },
  },
  {
    name: 'bloques y frases de peligro',
    content: [
      title('Hoja de datos de seguridad', 13),
      colons([['Identificador del producto', 'Serranía Alcohol 96']]),
      beside(
        colons([
          ['Aspecto', 'líquido transparente'],
          ['pH', '7'],
        ]),
        colons([
          ['Olor', 'característico'],
          ['Punto de inflamación', '13 °C'],
        ]),
      ),
      colons([
        [
          'Indicaciones de peligro',
          'H225 Líquido y vapores muy inflamables. H319 Provoca irritación ocular grave.',
        ],
        ['Almacenamiento', 'Mantener alejado del calor, por debajo de 30 °C.'],
      ]),
    ],
    found: {
      tradeName: 'Serranía Alcohol 96',
      appearance: 'líquido transparente',
      form: 'liquid',
      'figures.phAsSupplied': one(7),
      hazards: ['flammable', 'irritant'],
      'storage.range': most(30),
    },
  },
  {
    name: 'comparación con otros y especificación con valores típicos',
    content: [
      title('Especificación'),
      colons([['Nombre del producto', 'Serranía Ácido L']]),
      heading('Especificaciones'),
      table(
        [
          ['Propiedad', 'Especificación', 'Valores típicos', 'Método'],
          ['Índice de acidez, mg KOH/g', '195 – 205', '200', 'interno'],
          ['Punto de fusión, °C', '53 – 57', '55', 'interno'],
        ],
        [170, 90, 90, '*'],
      ),
      heading('Comparación con otros ácidos'),
      table(
        [
          ['Propiedad', 'Ácido A', 'Ácido B'],
          ['HLB', '15', '17'],
          ['Densidad, g/ml', '0,94', '0,92'],
        ],
        [170, 90, 90],
      ),
    ],
    found: {
      tradeName: 'Serranía Ácido L',
      'figures.acidValue': within(195, 200, 205),
      'figures.meltingPoint': within(53, 55, 57),
    },
  },
];
