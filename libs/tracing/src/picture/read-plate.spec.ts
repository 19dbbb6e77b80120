import { seededRandom } from '@archwright/kernel';
import { TracingError } from '../errors.js';
import { evaluateTracing } from '../evaluation/evaluation.js';
import { distance } from '../point.js';
import { readPlate } from './read-plate.js';
import { syntheticPlate } from './synthetic-plate.builder.js';

const PICTURES = Number(process.env.ARCHWRIGHT_PLATE_PICTURES ?? 8);

describe('pictures of the plate', () => {
  it('show apex and angle near the truth, in nearly all of them', () => {
    const misses: string[] = [];
    for (let seed = 1; seed <= PICTURES; seed++) {
      const t0 = performance.now();
      const plate = syntheticPlate(seededRandom(seed), { width: 900 });
      const t1 = performance.now();
      process.stderr.write(`render ${String(t1 - t0)}\n`);
      try {
        const reading = readPlate(plate.picture, plate.map, { stylusOn: 'lower', view: 'as-worn' });
        process.stderr.write(`read ${String(performance.now() - t1)}\n`);
        const t2 = performance.now();
        const found = evaluateTracing(reading.input);
        process.stderr.write(
          `${String(seed)} eval ${String(performance.now() - t2)} n ${String(reading.input.points.length)}\n`,
        );
        if (found.apex === null) {
          misses.push(`${String(seed)}: no apex`);
          continue;
        }
        const away = distance(plate.map.toPlate(reading.toPicture(found.apex)), plate.map.toPlate(plate.apexPx));
        const turned = Math.abs(found.apexAngleDeg - plate.apexAngleDeg);
        if (away > 0.2 || turned > 2)
          misses.push(`${String(seed)}: ${away.toFixed(3)} mm, ${turned.toFixed(2)} degrees`);
      } catch (error) {
        if (!(error instanceof TracingError)) throw error;
        misses.push(`${String(seed)}: ${error.code}`);
      }
    }
    process.stderr.write(`${String(PICTURES)} pictures, ${String(misses.length)} missed ${misses.join('; ')}\n`);
    expect(misses.length).toBeLessThanOrEqual(0.05 * PICTURES);
  });

  it('without a tracing are refused, never guessed', () => {
    for (let seed = 1; seed <= PICTURES / 2; seed++) {
      const { picture, map } = syntheticPlate(seededRandom(1000 + seed), { width: 700, hasTracing: false });
      expect(() => readPlate(picture, map, { stylusOn: 'lower', view: 'as-worn' })).toThrow(/No tracing was found/);
    }
  });
});
