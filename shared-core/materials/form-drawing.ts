import type { Form } from './vocabulary';

/** One stroke of a drawing: SVG path data, and how it is inked. */
export interface Stroke {
  d: string;
  /** `body` is outlined and faintly filled, `dark` more so, both opaque; `line` is not filled; `grain` is filled alone. */
  ink: 'body' | 'dark' | 'line' | 'grain';
}

/** The sheet of paper that every drawing stands on. */
export const DRAWING = { width: 48, height: 36 } as const;

type Place = readonly [x: number, y: number];

function ellipse([x, y]: Place, rx: number, ry = rx): string {
  return `M${x - rx} ${y}a${rx} ${ry} 0 1 0 ${2 * rx} 0a${rx} ${ry} 0 1 0 ${-2 * rx} 0Z`;
}

/** A drop that was set on a cold belt: flat below, domed above. */
const pastille = ([x, y]: Place): string => `M${x - 5} ${y}c0-6 10-6 10 0a5 1.7 0 0 1-10 0Z`;

/** A heap of three rows, the hindmost first, so that those before cover those behind. */
const HEAP: readonly Place[] = [
  ...([20, 29] as const).map((x): Place => [x, 13]),
  ...([14.5, 24, 33.5] as const).map((x): Place => [x, 20]),
  ...([9, 19, 29, 39] as const).map((x): Place => [x, 28]),
];

const bead = (place: Place): Stroke[] => [
  { d: ellipse(place, 5), ink: 'body' },
  { d: `M${place[0] - 2.6} ${place[1] - 1.2}a3 3 0 0 1 2-1.7`, ink: 'line' },
];

/** Five corners, none alike: turned by where it lies. */
function granule([x, y]: Place, at: number): string {
  const corners = Array.from({ length: 5 }, (_, corner) => {
    const turn = ((corner + (at % 3) * 0.35) / 5) * 2 * Math.PI;
    const far = 4.6 + ((at * 7 + corner * 5) % 4) * 0.45;
    return `${(x + far * Math.cos(turn)).toFixed(1)} ${(y + far * 0.85 * Math.sin(turn)).toFixed(1)}`;
  });
  return `M${corners.join('L')}Z`;
}

const FLAKES = [
  'M17 9l9-3 4 4-8 4Z',
  'M28 14l8-2 5 5-9 3Z',
  'M8 18l10-5 3 6-9 4Z',
  'M20 20l9-3 5 5-10 4Z',
  'M5 27l8-3 6 4-8 4Z',
  'M17 28l8-3 5 4-8 4Z',
  'M30 26l8-3 6 4-9 5Z',
];

const GRAINS: readonly Place[] = [
  [24, 14],
  [20, 18.5],
  [27, 18],
  [23, 22],
  [17, 24],
  [30, 23.5],
  [13, 28.5],
  [20, 28],
  [27, 28],
  [34.5, 28.5],
];

const BEAKER: Stroke[] = [
  { d: 'M12 4h24M15 4v23a4 4 0 0 0 4 4h10a4 4 0 0 0 4-4V4', ink: 'line' },
  { d: 'M28 9h5M30 20h3M28 25h5', ink: 'line' },
];

/** Each form as it looks on the bench; our own drawings. */
export const FORM_DRAWINGS: Record<Form, readonly Stroke[]> = {
  pellets: HEAP.map((place) => ({ d: pastille(place), ink: 'body' })),
  flakes: FLAKES.map((d) => ({ d, ink: 'body' })),
  beads: HEAP.flatMap(bead),
  powder: [
    { d: 'M3 31c8-1 13-21 21-22c8 1 13 21 21 22Z', ink: 'body' },
    ...GRAINS.map((place): Stroke => ({ d: ellipse(place, 0.8), ink: 'grain' })),
  ],
  granules: HEAP.map((place, at) => ({ d: granule(place, at), ink: 'body' })),
  paste: [
    { d: 'M10 16c1-6 7-3 12-9c3 5 13 2 16 9Z', ink: 'body' },
    { d: 'M16 14c3-2 6-1 8-4', ink: 'line' },
    { d: 'M9 16h30v3H9Z', ink: 'body' },
    { d: 'M11 19h26v9a4 4 0 0 1-4 4H15a4 4 0 0 1-4-4Z', ink: 'dark' },
  ],
  liquid: [{ d: 'M15 14h18v13a4 4 0 0 1-4 4H19a4 4 0 0 1-4-4Z', ink: 'dark' }, ...BEAKER],
  'viscous liquid': [
    { d: 'M9 29c0-4 30-4 30 0c0 5-30 5-30 0Z', ink: 'body' },
    { d: 'M14 26c0-3.5 20-3.5 20 0c0 3.5-20 3.5-20 0Z', ink: 'body' },
    { d: 'M18.5 23c0-2.5 11-2.5 11 0c0 2.5-11 2.5-11 0Z', ink: 'body' },
    { d: 'M22.5 23.5V14c0-3-2-4-2-7h7c0 3-2 4-2 7v9.5Z', ink: 'dark' },
    { d: 'M4 3L27 4.5a2 2 0 0 1 0 4L4 7Z', ink: 'body' },
  ],
  block: [
    { d: 'M6 14L25 6L43 11L24 20Z', ink: 'body' },
    { d: 'M6 14V25L24 32V20Z', ink: 'dark' },
    { d: 'M24 20L43 11V22L24 32Z', ink: 'body' },
    { d: 'M14 17v11.500M32 16.300V27.5', ink: 'line' },
  ],
};

/** What the drawing is, for who cannot see it. */
export function drawingWords(form: string): string {
  return `Drawing of its form: ${form}`;
}
