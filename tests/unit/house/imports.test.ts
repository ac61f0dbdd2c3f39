import { expect, test } from 'vitest';
import { circles, importsOfProduct } from './imports';

test('a circle is found, however long, and a tree has none', () => {
  const graph = new Map([
    ['a', ['b', 'd']],
    ['b', ['c']],
    ['c', ['a']],
    ['d', []],
    ['e', ['e']],
  ]);
  expect(circles(graph)).toEqual([['a', 'b', 'c'], ['e']]);
  expect(
    circles(
      new Map([
        ['a', ['b', 'c']],
        ['b', ['c']],
        ['c', []],
      ]),
    ),
  ).toEqual([]);
});

test('no file of the product imports itself through others, not even for its types', () => {
  const graph = importsOfProduct();
  expect(graph.size).toBeGreaterThan(300);
  expect(graph.get('electron/main/service-host.ts')).toContain('electron/service/bridge/ask.ts');
  expect(circles(graph)).toEqual([]);
});
