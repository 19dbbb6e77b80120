import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, gzip } from 'node:zlib';
import type { Plugin } from 'vite';

const TEXT = /\.(js|css|html|svg)$/;
const WAYS = [
  { extension: 'br', compress: promisify(brotliCompress) },
  { extension: 'gz', compress: promisify(gzip) },
];

/** Lays a compressed copy beside each built text, so that the service sends it without compressing anything itself. */
export function compressed(): Plugin {
  return {
    name: 'compressed-copies',
    apply: 'build',
    async writeBundle({ dir = '' }, bundle) {
      for (const file of Object.values(bundle).filter(({ fileName }) => TEXT.test(fileName))) {
        const content = file.type === 'chunk' ? file.code : file.source;
        for (const { extension, compress } of WAYS)
          await writeFile(join(dir, `${file.fileName}.${extension}`), await compress(content));
      }
    },
  };
}
