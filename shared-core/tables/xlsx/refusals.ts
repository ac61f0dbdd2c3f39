import { Problem } from '../../problems/problem';

function refuse(title: string, advice: string, why?: string): Problem {
  return new Problem({ code: 'invalid-input', title, advice, facts: why === undefined ? {} : { why } });
}

/** A file that is none of the kind that is read here; `advice` says how it becomes one. */
export const notAWorkbook = (title: string, advice: string) => refuse(title, advice);

/** A workbook that breaks the rules of its format. `why` is for whoever looks into it, not for the maker. */
export const damaged = (why: string) =>
  refuse(
    'This spreadsheet file is damaged and cannot be read.',
    'Open it in the program that made it, save it again as .xlsx, and choose the new file. Where that fails too, ask for it to be sent anew. Nothing was read from it.',
    why,
  );

/** A workbook that would take more memory than a table of a maker ever needs. */
export const tooLarge = (why: string) =>
  refuse(
    'This spreadsheet unpacks to far more than a table should hold, and was not read.',
    'Copy the rows that you need into a new spreadsheet, save that, and choose it. If the file comes from somebody whom you do not know, do not open it.',
    why,
  );

/** A workbook whose XML declares entities: nothing that writes spreadsheets does. */
export const declaresEntities = () =>
  refuse(
    'This spreadsheet holds instructions that no spreadsheet needs (a document type), and was not read.',
    'Do not open it if it comes from somebody whom you do not know. Otherwise save it again in a spreadsheet program, and choose the new file.',
  );

export const withoutWorksheet = () =>
  refuse(
    'This spreadsheet file has no worksheet.',
    'It may hold charts or macros only. Open it in a spreadsheet program, put the table on a worksheet, save it, and choose it again.',
  );

/** What is to be written does not fit a worksheet. */
export const cannotBeWritten = (title: string, advice: string) => refuse(title, advice);
