import { z } from 'zod';
import { FORMULA } from '../formulas/noun';
import { LIMIT } from '../limits/noun';
import { MATERIAL } from '../materials/noun';
import type { Field, Fields } from '../record/field';
import { formatOf, type Noun } from '../record/noun';
import { SAVED_SEARCH } from '../searches/search';
import { SUBSTANCE } from '../substances/noun';
import { TRIAL_SERIES } from '../trials/noun';
import { DOCUMENT_FORMAT, exchangedRecord, libraryDocument } from './document';

type Schema = Record<string, unknown>;

/** Every kind of record that a document holds. */
const NOUNS = [SUBSTANCE, LIMIT, MATERIAL, FORMULA, TRIAL_SERIES, SAVED_SEARCH] as unknown as Noun<object>[];

function plainSchema(of: z.ZodType): Schema {
  const { $schema: _schema, ...schema } = z.toJSONSchema(of, {
    target: 'draft-2020-12',
    io: 'input',
    unrepresentable: 'any',
  }) as Schema;
  return schema;
}

/** What a field is in words: its unit, its hint. A share is in parts per million, as it is kept. */
function described({ shape, hint }: Field): string {
  const unit =
    shape.kind === 'share'
      ? 'In parts per million of the whole.'
      : 'unit' in shape && shape.unit
        ? `In ${shape.unit}.`
        : '';
  return [unit, hint ?? ''].filter(Boolean).join(' ');
}

function fieldSchema(field: Field): Schema {
  const description = described(field);
  return { title: field.label, ...(description && { description }), ...plainSchema(field.stored) };
}

/** The content of a kind of record, field by field; any may be left out where nothing is known of it. */
function contentSchema(fields: Fields): Schema {
  return {
    type: 'object',
    properties: Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, fieldSchema(field)])),
  };
}

function recordSchema(noun: Noun<object>): Schema {
  const { properties, ...rest } = plainSchema(exchangedRecord) as { properties: Schema };
  return {
    title: noun.name,
    ...rest,
    properties: {
      ...properties,
      kind: { const: noun.kind },
      format: { const: formatOf(noun as Noun<never>) },
      content: contentSchema(noun.fields),
    },
  };
}

/**
 * The JSON Schema (draft 2020-12) of a library as a document, made from the description of the fields. It is published
 * with every pack, and as a file of its own.
 */
export function librarySchema(): Schema {
  const { properties, ...rest } = plainSchema(libraryDocument) as { properties: Schema };
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    $id: `urn:stillroom:library:${DOCUMENT_FORMAT}`,
    title: 'A Stillroom library, or a part of one',
    description:
      'Shares are whole parts per million, masses whole milligrams, money whole minor units with a currency, moments ISO 8601 in UTC. Attached files are named by the SHA-256 of their bytes.',
    ...rest,
    properties: {
      ...properties,
      format: { const: DOCUMENT_FORMAT },
      records: { type: 'array', items: { oneOf: NOUNS.map(recordSchema) } },
    },
  };
}
