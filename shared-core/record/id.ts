import { z } from 'zod';

/** What a record is known by: a UUID that is never used again. */
export const id = z.uuid('This is not an identifier of ours.');
