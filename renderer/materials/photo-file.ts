/** The longest side of a kept photo, in pixels: sharp across half a printed page, and a few hundred kB at most. */
const LONGEST = 1600;
const JPEG_QUALITY = 0.9;

/**
 * A photo as sheets can print it, of any picture that the browser reads: a camera's rotation carried out, WebP as JPEG,
 * no larger than needed, clear parts white as paper. A file that is no picture is left for the service to refuse.
 */
export async function printablePhoto(file: File): Promise<Blob> {
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  } catch {
    return file;
  }
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const canvas = new OffscreenCanvas(
    Math.max(1, Math.round(picture.width * scale)),
    Math.max(1, Math.round(picture.height * scale)),
  );
  const context = canvas.getContext('2d');
  if (!context) return file;
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY });
}
