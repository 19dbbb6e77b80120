import { SORE_SPOT_REGIONS } from '@archwright/measures';
import { BUTTON, DRAWING, REGION_PLACES } from './region-places.js';

describe.each(['upper', 'lower'] as const)('the drawing of the %s arch', (arch) => {
  const places = REGION_PLACES[arch];

  it('has every region of the map, each once', () => {
    expect(places.map(({ region }) => region).sort()).toEqual([...SORE_SPOT_REGIONS[arch]].sort());
  });

  it('keeps every button inside, and none on another', () => {
    for (const { x, y } of places) {
      expect(Math.min(x, DRAWING.width - x)).toBeGreaterThanOrEqual(BUTTON.width / 2);
      expect(Math.min(y, DRAWING.height - y)).toBeGreaterThanOrEqual(BUTTON.height / 2);
    }
    for (const one of places) {
      const on = places.filter(
        (other) =>
          other !== one && Math.abs(other.x - one.x) < BUTTON.width && Math.abs(other.y - one.y) < BUTTON.height,
      );
      expect([one.region, on]).toEqual([one.region, []]);
    }
  });

  it("shows the patient's right on the left of the picture", () => {
    for (const { region, x } of places) {
      if (region.endsWith('-right')) expect(x).toBeLessThan(DRAWING.width / 2);
      if (region.endsWith('-left')) expect(x).toBeGreaterThan(DRAWING.width / 2);
    }
  });
});
