import { button, press, type Screen } from './openers';

const always = (address: string) => () => address;

/** The library's page, and what meets it: backups, other libraries, packs. */
export const LIBRARY_SCREENS: Screen[] = [
  {
    name: 'library',
    route: 'library',
    address: always('/library'),
    prepare: (page) => button(page, 'Back up now').click(),
    openers: [
      press('go back to a backup', ['library/LibraryPage', 'library/BackupsSection'], 'Go back to this…'),
      {
        name: 'choose a folder',
        components: ['library/FolderDialog'],
        async open(page) {
          await button(page, 'Keep them in another folder…').click();
          await page.getByRole('dialog').getByRole('list').getByRole('button').first().waitFor();
        },
      },
    ],
  },
  { name: 'compare and merge', route: 'meet', address: always('/library/meet') },
  {
    name: 'compare with a backup',
    route: 'meet',
    address: always('/library'),
    async prepare(page) {
      await button(page, 'Back up now').click();
      await page.getByRole('link', { name: 'Compare with now…' }).first().click();
      await page.getByRole('heading', { name: 'Record by record' }).waitFor();
    },
    openers: [press('a library beside', ['meeting/MakeBeside'], 'Make a library of its own of it…')],
  },
  { name: 'look-alikes', route: 'look-alikes', address: always('/library/look-alikes') },
];
