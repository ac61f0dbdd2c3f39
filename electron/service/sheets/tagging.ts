import { createRequire } from 'node:module';
import type { StructureElement, Tagged } from './structure';

/**
 * pdfmake can mark a PDF as tagged but writes no structure into it, which would be a promise to a screen reader
 * that is not kept. pdfkit below it can: so the few methods of pdfmake that draw are wrapped here, to put each
 * line into the element its node was given, and all else (rules, feet, repeated heads) aside as artifacts.
 */

interface KitElement {
  add(child: unknown): unknown;
}

interface KitDocument {
  struct(type: string, options?: { alt?: string; scope?: string }): KitElement;
  addStructure(element: KitElement): void;
  markStructureContent(type: string): unknown;
  markContent(tag: 'Artifact', options: { type: string }): void;
  endMarkedContent(): void;
}

interface Page {
  items: { item: Tagged }[];
}

interface Renderer {
  pdfDocument: KitDocument;
  renderPages(pages: Page[]): void;
  renderLine(line: Tagged, x: number, y: number): void;
  renderImage(image: Tagged): void;
  renderSVG(plot: Tagged): void;
  renderVector(vector: Tagged): void;
}

interface LayoutBuilder {
  buildNextLine(node: Tagged): Tagged | null;
}

const installed = createRequire(import.meta.url);
const made = new WeakMap<KitDocument, Map<StructureElement, KitElement>>();

function build(doc: KitDocument, plan: StructureElement, all: Map<StructureElement, KitElement>): KitElement {
  const kit = doc.struct(plan.type, { alt: plan.alt, scope: plan.type === 'TH' ? 'Column' : undefined });
  all.set(plan, kit);
  for (const child of plan.children) kit.add(build(doc, child, all));
  return kit;
}

function drawIn(doc: KitDocument, plan: StructureElement | undefined, draw: () => void) {
  const kit = plan ? made.get(doc)?.get(plan) : undefined;
  const repeated = plan !== undefined && plan.drawn >= Math.max(plan.laidOut, 1);
  if (plan) plan.drawn += 1;
  if (plan && kit && !repeated) kit.add(doc.markStructureContent(plan.type));
  else doc.markContent('Artifact', { type: plan ? 'Pagination' : 'Layout' });
  draw();
  doc.endMarkedContent();
}

function wrapRenderer(renderer: Renderer) {
  const { renderPages, renderLine, renderImage, renderSVG, renderVector } = renderer;
  renderer.renderPages = function (this: Renderer, pages) {
    const tagged = pages.flatMap((page) => page.items).find(({ item }) => item._structure);
    if (tagged?.item._structure) {
      const all = new Map<StructureElement, KitElement>();
      const root = build(this.pdfDocument, tagged.item._structure.root, all);
      this.pdfDocument.addStructure(root);
      made.set(this.pdfDocument, all);
    }
    renderPages.call(this, pages);
  };
  renderer.renderLine = function (this: Renderer, line, x, y) {
    drawIn(this.pdfDocument, line._structure, () => renderLine.call(this, line, x, y));
  };
  renderer.renderImage = function (this: Renderer, image) {
    drawIn(this.pdfDocument, image._structure, () => renderImage.call(this, image));
  };
  renderer.renderSVG = function (this: Renderer, plot) {
    drawIn(this.pdfDocument, plot._structure, () => renderSVG.call(this, plot));
  };
  renderer.renderVector = function (this: Renderer, vector) {
    drawIn(this.pdfDocument, undefined, () => renderVector.call(this, vector));
  };
}

function wrapLayout(builder: LayoutBuilder) {
  const { buildNextLine } = builder;
  builder.buildNextLine = function (this: LayoutBuilder, node) {
    const line = buildNextLine.call(this, node);
    if (line && node._structure) {
      line._structure = node._structure;
      node._structure.laidOut += 1;
    }
    return line;
  };
}

/** Makes pdfmake write structure. Called once, before the first sheet. */
export function writeStructure(): void {
  const renderer = installed('pdfmake/js/Renderer') as { default: { prototype: Renderer } };
  const layout = installed('pdfmake/js/LayoutBuilder') as { default: { prototype: LayoutBuilder } };
  wrapRenderer(renderer.default.prototype);
  wrapLayout(layout.default.prototype);
}
