import { DEEPEST, filesOf, isAccepted, MOST_DROPPED, MOST_LOOKED_AT } from '@renderer/kit/dropped-files';
import { describe, expect, it } from 'vitest';

/* Folders as a browser gives them (File and Directory Entries API, W3C): read through callbacks, some at a time. */

type Held = { [name: string]: Held | 'file' | 'locked' };
const SOME = 100;

function entryOf(name: string, held: Held | 'file' | 'locked', within = ''): FileSystemEntry {
  const fullPath = `${within}/${name}`;
  if (typeof held === 'string') {
    const file = (done: (file: File) => void, fail: (error: Error) => void): void =>
      held === 'locked' ? fail(new Error('NotReadableError')) : done(new File(['x'], name));
    return { isFile: true, isDirectory: false, name, fullPath, file } as unknown as FileSystemEntry;
  }
  const createReader = () => {
    const left = Object.entries(held).map(([key, one]) => entryOf(key, one, fullPath));
    return { readEntries: (done: (some: FileSystemEntry[]) => void) => done(left.splice(0, SOME)) };
  };
  return { isFile: false, isDirectory: true, name, fullPath, createReader } as unknown as FileSystemEntry;
}
const folder = (held: Held): FileSystemEntry[] => [entryOf('Sheets', held)];
const namesOf = async (held: Held, accept = '.pdf') => {
  const { files, left } = await filesOf(folder(held), accept);
  return { names: files.map(({ name }) => name), left };
};
const many = (count: number, name: (at: number) => string): Held =>
  Object.fromEntries(Array.from({ length: count }, (_, at) => [name(at), 'file' as const]));

describe('a dropped folder', () => {
  it('gives its files and those within, in the order of their names, 2 before 10', async () => {
    const held: Held = { '10.pdf': 'file', '2.PDF': 'file', Waxes: { 'b.pdf': 'file', 'a.pdf': 'file' } };
    expect(await namesOf(held)).toEqual({ names: ['2.PDF', '10.pdf', 'a.pdf', 'b.pdf'], left: '' });
  });

  it('names what it leaves: other kinds, and what cannot be read; not what a system hides', async () => {
    const held: Held = {
      ...{ 'a.pdf': 'file', 'b.pdf': 'locked', 'note.docx': 'file', '.DS_Store': 'file' },
      ...{ '1.txt': 'file', '2.txt': 'file', '3.txt': 'file' },
    };
    const { names, left } = await namesOf(held);
    expect(names).toEqual(['a.pdf']);
    expect(left).toBe(
      '4 files of other kinds were left: “note.docx”, “1.txt”, “2.txt” and 1 more. One could not be read: “b.pdf”.',
    );
  });

  it('is read to its end, however many its reader gives at a time, and taken up to a bound that is told', async () => {
    const all = await namesOf(many(MOST_DROPPED, (at) => `${at}.pdf`));
    expect(all.names).toHaveLength(MOST_DROPPED);
    expect(all.left).toBe('');
    const more = await namesOf(many(MOST_DROPPED + 3, (at) => `${at}.pdf`));
    expect(more.names).toEqual(all.names);
    expect(more.left).toBe('3 more than the 200 that are taken at once were left.');
  });

  it('is not walked without end, neither down nor along', async () => {
    let deep: Held = { 'too-deep.pdf': 'file' };
    for (let at = 0; at < DEEPEST; at += 1) deep = { [`level ${DEEPEST - at}`]: deep };
    const down = await namesOf({ ...deep, 'a.pdf': 'file' });
    expect(down.names).toEqual(['a.pdf']);
    expect(down.left).toMatch(/^A folder was not looked into, being too deep: “level \d”\.$/);
    const along = await namesOf(many(MOST_LOOKED_AT + 50, (at) => `${at}.txt`));
    expect(along.left).toContain('Looking ended after 5,000 files and folders: drop a smaller folder.');
  });

  it('says so where it is empty', async () => {
    expect(await namesOf({})).toEqual({ names: [], left: 'The folder holds no file.' });
  });

  it('comes together with files dropped beside it, which are taken whatever they are', async () => {
    const dropped = [entryOf('odd.docx', 'file'), ...folder({ 'a.pdf': 'file' })];
    const { files, left } = await filesOf(dropped, '.pdf');
    expect(files.map(({ name }) => name).sort()).toEqual(['a.pdf', 'odd.docx']);
    expect(left).toBe('');
  });
});

describe('the kinds of file that a field asks for', () => {
  it.each([
    ['a.PDF', '', 'application/pdf,.pdf', true],
    ['a.pdf.exe', '', 'application/pdf,.pdf', false],
    ['photo', 'image/png', 'image/*', true],
    ['photo.png', 'text/plain', 'image/*', false],
    ['a.csv', 'text/csv', '.xlsx,text/csv', true],
    ['anything', '', '', true],
  ])('tell of %s (%s) by “%s”: %s', (name, type, accept, is) => {
    expect(isAccepted({ name, type }, accept)).toBe(is);
  });
});
