const CHUNK = 0x8000;

/** The bytes of a file as they are: what they spell is read where the encoding is known. */
export async function bytesAsBase64(file: Blob): Promise<string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let binary = '';
  // In parts, since a call takes so many arguments only.
  for (let from = 0; from < bytes.length; from += CHUNK)
    binary += String.fromCharCode(...bytes.subarray(from, from + CHUNK));
  return btoa(binary);
}
