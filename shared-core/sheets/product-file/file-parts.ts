/** The parts of a product file that are sheets of its own alone, and how each is called. */
export const FILE_PART_TITLES = {
  specification: 'Specification of the finished product',
  claims: 'Claims and statements',
  reports: 'Reports on file',
  batches: 'Batches',
} as const;
export type FilePart = keyof typeof FILE_PART_TITLES;
export const FILE_PARTS = Object.keys(FILE_PART_TITLES) as [FilePart, ...FilePart[]];
