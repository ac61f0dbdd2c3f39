import { createRequire } from 'node:module';

/**
 * pdfmake asks two dozen properties of every piece of text, and each time puts the piece on the stack of styles and takes
 * it off again. A piece that names no style adds nothing that was not looked at before, so the stack is asked as it is.
 */

type Item = Record<string, unknown>;

interface StyleStack {
  getProperty(property: string): unknown;
}

interface StyleStacks {
  getStyleProperty(item: Item, stack: StyleStack | null, property: string, otherwise: unknown): unknown;
}

const given = (value: unknown): boolean => value !== undefined && value !== null;

/** Makes pdfmake look up styles so. Called once, before the first sheet. */
export function lookUpStylesQuickly(): void {
  const { default: stacks } = createRequire(import.meta.url)('pdfmake/js/StyleContextStack') as {
    default: StyleStacks;
  };
  const { getStyleProperty } = stacks;
  stacks.getStyleProperty = function (item, stack, property, otherwise) {
    const own = item[property];
    if (given(own)) return own;
    if (!stack || given(item.style)) return getStyleProperty.call(this, item, stack, property, otherwise);
    const found = stack.getProperty(property);
    return given(found) ? found : otherwise;
  };
}
