/** Hands bytes to the maker as a file to save, under a proposed name. */
export function saveFile(bytes: Uint8Array<ArrayBuffer>, fileName: string, mediaType: string): void {
  const address = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The download has its own hold on the bytes by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
