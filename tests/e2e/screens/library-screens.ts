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
      press('go back to a backup', ['library/LibraryPage'], 'Go back to this…'),
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
];
