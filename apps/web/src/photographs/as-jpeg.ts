import { refusedHere } from '../api/errors.js';
import { photographWords as words } from '../words/photographs.js';

/** Enough to see a ridge on a large screen. */
const LONGEST_PX = 2048;
const QUALITY = 0.85;

/**
 * A picture as it is kept: upright, not larger than is looked at, and without what the camera noted of device, time and
 * place, because it is drawn anew.
 *
 * @returns a JPEG file in base 64
 * @throws {ProblemError} for a file that is no picture
 */
export async function asJpeg(file: File): Promise<string> {
  const bitmap = await createImageBitmap(file).catch(() => {
    throw refusedHere('jpeg', words.unreadable);
  });
  try {
    const scale = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height));
    const scaled = (px: number): number => Math.max(1, Math.round(px * scale));
    const canvas = new OffscreenCanvas(scaled(bitmap.width), scaled(bitmap.height));
    const context = canvas.getContext('2d');
    if (context === null) throw refusedHere('jpeg', words.unreadable);
    // What is see-through would become black.
    context.fillStyle = 'white';
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    return await base64Of(await canvas.convertToBlob({ type: 'image/jpeg', quality: QUALITY }));
  } finally {
    bitmap.close();
  }
}

async function base64Of(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
