/** Hands a file to the person. To be called soon after a tap, or the browser may refuse. */
export function download(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // Safari reads the file only after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
