/** In place of the unpacker of WOFF2, see vite.config.ts. */
export default function decompress(): never {
  throw new Error('the PDF takes fonts that are not packed');
}
