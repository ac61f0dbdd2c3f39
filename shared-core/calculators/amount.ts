import { z } from 'zod';

/** A number as entered, or null while the field is empty. Its bounds are the computation's. */
export const amount = z.number('Enter a number.').nullable();
