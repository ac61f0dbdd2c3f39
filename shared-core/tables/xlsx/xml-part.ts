import { SaxesParser } from 'saxes';
import type { Archive } from './archive';
import { damaged, declaresEntities } from './refusals';

/** What an element is asked: its attributes by their names as written, prefixes included. */
export type Attributes = Readonly<Record<string, string>>;

/** Hears of the elements of a part, by their names without prefix: only one vocabulary is read of each part. */
export interface Listener {
  open?(name: string, attributes: Attributes): void;
  /** The text of an element, in as many pieces as it comes. */
  text?(text: string): void;
  close?(name: string): void;
}

const DEEPEST = 64;
const MOST_ATTRIBUTES = 256;

/**
 * Left out with all within: what a later program added (AlternateContent of ECMA-376 Part 3; Part 1, 18.2.10 extLst),
 * and how a text is pronounced (18.4.6 rPh).
 */
const LEFT_OUT = new Set(['AlternateContent', 'extLst', 'rPh']);

const localName = (name: string) => name.slice(name.indexOf(':') + 1);

/** An attribute by its name without prefix, such as the `id` of `r:id`. */
export function prefixedAttribute(attributes: Attributes, name: string): string | undefined {
  const found = Object.keys(attributes).find((key) => key.endsWith(`:${name}`));
  return found === undefined ? undefined : attributes[found];
}

/** xsd:boolean of XML Schema Part 2, 3.2.2. */
export const isOn = (value: string | undefined) => value === '1' || value === 'true';

/** Parts are UTF-8 or UTF-16: ECMA-376 Part 2 (2021), 6.2.5. */
function decoderFor(piece: Uint8Array): TextDecoder {
  const [first, second] = piece;
  if ((first === 0xff && second === 0xfe) || (first === 0x3c && second === 0)) return decoder('utf-16le');
  if ((first === 0xfe && second === 0xff) || (first === 0 && second === 0x3c)) return decoder('utf-16be');
  return decoder('utf-8');
}
const decoder = (encoding: string) => new TextDecoder(encoding, { fatal: true });

/** Tells a listener of a part's elements, less what is left out. */
class Telling {
  private depth = 0;
  /** How deep the element lies that is left out with all within; 0 where none is. */
  private leftOut = 0;

  constructor(private readonly listener: Listener) {}

  open(name: string, attributes: Attributes): void {
    this.depth++;
    if (this.depth > DEEPEST) throw damaged('its elements lie too deep within each other');
    const local = localName(name);
    if (this.leftOut === 0 && LEFT_OUT.has(local)) this.leftOut = this.depth;
    if (this.leftOut === 0) this.listener.open?.(local, attributes);
  }

  text(text: string): void {
    if (this.leftOut === 0) this.listener.text?.(text);
  }

  close(name: string): void {
    if (this.leftOut === 0) this.listener.close?.(localName(name));
    if (this.leftOut === this.depth) this.leftOut = 0;
    this.depth--;
  }
}

/** Prefixes are not looked up, nor places kept: both take long, and neither is asked for. */
const OPTIONS = { xmlns: false, position: false } as const;

function parserFor(listener: Listener): SaxesParser<typeof OPTIONS> {
  const parser = new SaxesParser(OPTIONS);
  const telling = new Telling(listener);
  let attributes = 0;
  parser.on('doctype', () => {
    throw declaresEntities();
  });
  parser.on('error', (error) => {
    throw damaged(error.message);
  });
  parser.on('xmldecl', ({ encoding }) => {
    if (encoding && !/^(utf-8|utf-16(le|be)?|us-ascii)$/i.test(encoding))
      throw damaged(`it is written in ${encoding}`);
  });
  parser.on('opentagstart', () => {
    attributes = 0;
  });
  parser.on('attribute', () => {
    if (++attributes > MOST_ATTRIBUTES) throw damaged('an element has too many attributes');
  });
  parser.on('opentag', (tag) => telling.open(tag.name, tag.attributes));
  parser.on('text', (text) => telling.text(text));
  parser.on('cdata', (text) => telling.text(text));
  parser.on('closetag', (tag) => telling.close(tag.name));
  return parser;
}

/**
 * Reads one part of a workbook as XML, piece by piece.
 * @throws Problem where it is missing, too large, no sound XML, or declares a document type or entities.
 */
export function readXmlPart(archive: Archive, part: string, listener: Listener): void {
  const parser = parserFor(listener);
  let text: TextDecoder | undefined;
  const decode = (piece?: Uint8Array) => {
    try {
      return text!.decode(piece, { stream: piece !== undefined });
    } catch {
      throw damaged(`${part} is not written in the letters that it says`);
    }
  };
  archive.unpack(part, (piece) => {
    if (piece.length === 0) return;
    text ??= decoderFor(piece);
    parser.write(decode(piece));
  });
  if (!text) throw damaged(`${part} is empty`);
  parser.write(decode()).close();
}
