import type { Screen } from './openers';

const always = (address: string) => () => address;

/** Taking tables in: before a file is chosen, and with one looked at that holds a row of each kind. */
export const TABLE_SCREENS: Screen[] = [
  {
    name: 'take in a table',
    route: 'take-in',
    address: always('/take-in'),
  },
  {
    name: 'take in a table, looked at',
    route: 'take-in',
    address: always('/take-in'),
    prepare: async (page) => {
      await page.getByLabel('Table', { exact: true }).setInputFiles({
        name: 'shelf.csv',
        mimeType: 'text/csv',
        buffer: Buffer.from(
          'Name;INCI;Ladung;HLB\nFeldhaus Muster 1;Cetearyl Glucoside;nonion.;11,5\nFeldhaus Muster 2;Sodium Stearate;geladen;hoch',
        ),
      });
      await page.getByText('What would become of 2 rows').waitFor();
    },
  },
];
