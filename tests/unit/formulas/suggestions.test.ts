import { CREATE_ROW, useSuggestions, type FoundMaterial } from '@renderer/formulas/suggestions';
import { describe, expect, it } from 'vitest';

interface Asked {
  text: string;
  answer: (...names: string[]) => Promise<void>;
}

/** A search whose answers come when the test says so. */
function slowSearch(creates = false) {
  const asked: Asked[] = [];
  const find = (text: string, signal: AbortSignal): Promise<FoundMaterial[]> =>
    new Promise((resolve, reject) => {
      signal.addEventListener('abort', () => reject(new DOMException('', 'AbortError')));
      const answer = async (...names: string[]): Promise<void> => {
        const found = names.map((name) => {
          const [tradeName = '', notes] = name.split(': ');
          const row = { id: name, tradeName, inci: '', code: '', supplier: '' };
          return { kind: 'materials', row, near: notes ? 'unshown' : 'name', putAside: false };
        });
        resolve(found as unknown as FoundMaterial[]);
        await new Promise((done) => setTimeout(done));
      };
      asked.push({ text, answer });
    });
  const box = useSuggestions(find, () => creates);
  const type = (text: string): void => {
    box.text.value = text;
    box.typed();
  };
  return { box, type, asked, last: () => asked.at(-1) as Asked };
}

type Marked = Awaited<ReturnType<ReturnType<typeof slowSearch>['box']['marked']>>;
const nameOf = (row: Marked): string | undefined => (row === CREATE_ROW ? row : row?.tradeName);

describe('picking a material by typing', () => {
  it('takes what was typed when Enter comes before its answer, not a row of an older text', async () => {
    const { box, type, last } = slowSearch();
    type('x');
    await last().answer('Xylityl wax', 'Xanthan gum');
    type('xanthan');
    const taken = box.marked();
    await last().answer('Xanthan gum');
    expect(nameOf(await taken)).toBe('Xanthan gum');
  });

  it('takes nothing when nothing matches, or when the text changes while Enter waits', async () => {
    const { box, type, last } = slowSearch();
    type('x');
    await last().answer('Xylityl wax');
    type('xq');
    const none = box.marked();
    await last().answer();
    expect(await none).toBeUndefined();
    type('xa');
    const older = box.marked();
    type('xan');
    await last().answer('Xanthan gum');
    expect(await older).toBeUndefined();
  });

  it('takes nothing once the box was left', async () => {
    const { box, type, last } = slowSearch();
    type('xan');
    const taken = box.marked();
    box.close();
    await last().answer('Xanthan gum');
    expect(await taken).toBeUndefined();
    expect(box.open.value).toBe(false);
  });

  it('takes the same name twice in a row, both times as fast', async () => {
    const { box, type, last } = slowSearch();
    for (let time = 1; time <= 2; time += 1) {
      type('xanthan');
      const taken = box.marked();
      await last().answer('Xanthan gum');
      expect(nameOf(await taken)).toBe('Xanthan gum');
      box.close();
    }
  });

  it('marks by arrow keys in the rows of the text, however fast they come', async () => {
    const { box, type, last } = slowSearch();
    type('g');
    await last().answer('Gel', 'Glucoside', 'Gum');
    type('gl');
    void box.step(1);
    const taken = box.marked();
    await last().answer('Glucoside', 'Glycerin');
    expect(nameOf(await taken)).toBe('Glycerin');
    void box.step(1);
    expect(nameOf(await box.marked())).toBe('Glucoside');
  });

  it('opens a closed list instead of taking from it', async () => {
    const { box, asked, last } = slowSearch();
    const taken = box.marked();
    await last().answer('Gel');
    expect(await taken).toBeUndefined();
    expect([asked.length, box.open.value]).toEqual([1, true]);
  });

  it('marks the nearest row, which the service puts first', async () => {
    const { box, type, last } = slowSearch();
    type('xanthan');
    const taken = box.marked();
    await last().answer('Xanthan 80', 'Behenyl wax: goes with Xanthan');
    expect(nameOf(await taken)).toBe('Xanthan 80');
    expect(box.rows.value.map((row) => row.tradeName)).toEqual(['Xanthan 80', 'Behenyl wax']);
  });

  it('says that there are more than it shows', async () => {
    const { box, type, last } = slowSearch();
    type('gel');
    await last().answer(...Array.from({ length: 31 }, (_, i) => `Gel ${i}`));
    expect([box.rows.value.length, box.more.value]).toEqual([30, true]);
  });

  it('takes a material that only mentions what was typed when it was chosen, never by Enter alone', async () => {
    const { box, type, last } = slowSearch();
    type('xanthan');
    await last().answer('Behenyl wax: with Xanthan', 'Oat wax: with Xanthan');
    expect([box.rows.value.length, await box.marked()]).toEqual([2, undefined]);
    await box.step(-1);
    expect(nameOf(await box.marked())).toBe('Oat wax');
    await box.step(1);
    expect(nameOf(await box.marked())).toBe('Behenyl wax');
  });

  it('offers to make what is typed behind all that is found, and at once where nothing is', async () => {
    const { box, type, last } = slowSearch(true);
    type('xanthan');
    await last().answer('Xanthan gum');
    expect(nameOf(await box.marked())).toBe('Xanthan gum');
    await box.step(1);
    expect(await box.marked()).toBe(CREATE_ROW);
    type('xanthanol');
    await last().answer();
    expect(await box.marked()).toBe(CREATE_ROW);
    box.close();
    const opening = box.marked();
    await last().answer();
    expect(await opening).toBeUndefined();
  });
});
