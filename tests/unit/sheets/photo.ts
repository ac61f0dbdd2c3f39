import type { SheetPhoto } from '@core/sheets/photo';

/** A small grey picture, PNG, made for these tests. */
export const PHOTO: SheetPhoto = {
  dataUrl:
    'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAADAAAAAgCAIAAADbtmxLAAAAb0lEQVR42s3BIQJEAAAAwX2gIAiCIAiCIAjCBUEQBEEQBEEQBEG4IAiCZ/nGzvDK8Mhwy3DJ8JfhlOGQYZdhk2GVYZFhlmGSYZRhkKGXoZOhlaGR4SdDLUMlQylDIUMuQyZDKkMiQyxDJEMoQyDzAd8ntIgKaifhAAAAAElFTkSuQmCC',
};
