import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { jest } from '@jest/globals';
import { TracingError } from '@archwright/tracing';
import sharp from 'sharp';
import { UsageError } from '../arguments.js';
import { readPicture } from './read-picture.js';
import { traceCommand } from './trace-command.js';

const folder = mkdtempSync(join(tmpdir(), 'trace-'));
afterAll(() => {
  rmSync(folder, { recursive: true });
});

/** Arms of 120 degrees from (400, 380), 20 pixels per mm; light lines on a dark plate. */
const PLATE = `<svg xmlns="http://www.w3.org/2000/svg" width="800" height="600">
  <rect width="800" height="600" fill="#303848"/>
  <path d="M${String(400 - 130)} ${String(380 - 75.06)} L400 380 L${String(400 + 130)} ${String(380 - 75.06)}"
    fill="none" stroke="#e8e4d8" stroke-width="6"/>
</svg>`;

async function answer(...args: string[]): Promise<unknown> {
  const written: string[] = [];
  const write = jest.spyOn(process.stdout, 'write').mockImplementation((text) => {
    written.push(String(text));
    return true;
  });
  try {
    expect(await traceCommand([...args, '--json'])).toBe(0);
  } finally {
    write.mockRestore();
  }
  return JSON.parse(written.join(''));
}

const STATED = ['--stylus', 'lower', '--view', 'as-worn'];

describe('cli trace on a picture', () => {
  it.each(['png', 'jpeg'] as const)(
    'finds the apex in a %s, however the file is named',
    async (format) => {
      const file = join(folder, `plate-${format}.bin`);
      writeFileSync(file, await sharp(Buffer.from(PLATE)).toFormat(format).toBuffer());
      const found = (await answer(file, ...STATED, '--scale', '0.05', '--posture', 'upright')) as {
        apexPx: { x: number; y: number };
        apexAngleDeg: number;
      };
      expect(found).toMatchObject({ form: 'typical', posture: 'upright' });
      expect(Math.hypot(found.apexPx.x - 400, found.apexPx.y - 380)).toBeLessThan(4);
      expect(Math.abs(found.apexAngleDeg - 120)).toBeLessThan(2);
    },
    60_000,
  );

  it('answers the same by four marks, and for a quarter turn', async () => {
    const file = join(folder, 'plate.png');
    const picture = sharp(Buffer.from(PLATE)).png();
    writeFileSync(file, await picture.toBuffer());
    const marks = ['--marks', '0,0;800,0;800,600;0,600', '--marks-mm', '40x30'];
    const there = await answer(file, ...STATED, ...marks);
    const turnedFile = join(folder, 'turned.png');
    writeFileSync(
      turnedFile,
      await sharp(await picture.toBuffer())
        .rotate(90)
        .png()
        .toBuffer(),
    );
    const turned = await answer(turnedFile, ...STATED, '--scale', '0.05');
    const angle = (of: unknown) => (of as { apexAngleDeg: number }).apexAngleDeg;
    expect(Math.abs(angle(there) - angle(turned))).toBeLessThan(0.5);
  }, 60_000);

  it('refuses what is no picture of a tracing, and a scale that is missing or wrong', async () => {
    const file = join(folder, 'empty.png');
    const plain = { create: { width: 400, height: 300, channels: 3 as const, background: '#555' } };
    writeFileSync(file, await sharp(plain).png().toBuffer());
    await expect(traceCommand([file, ...STATED, '--scale', '0.05'])).rejects.toThrow(TracingError);
    await expect(traceCommand([file, ...STATED])).rejects.toThrow('A picture needs its scale');
    await expect(traceCommand([file, ...STATED, '--scale', '9'])).rejects.toThrow(/from 0.001 to 0.5/);
    await expect(traceCommand([file, ...STATED, '--marks', '1,2;3', '--marks-mm', '4x3'])).rejects.toThrow(UsageError);
  });

  it('refuses a damaged picture and one of more than 50 megapixels, unread', async () => {
    await expect(readPicture(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 1, 2, 3))).rejects.toThrow(/cannot be read/);
    const huge = { create: { width: 8000, height: 6300, channels: 3 as const, background: '#555' } };
    const bytes = await sharp(huge).png().toBuffer();
    await expect(readPicture(bytes)).rejects.toThrow(/more than 50 megapixels/);
  }, 60_000);
});
