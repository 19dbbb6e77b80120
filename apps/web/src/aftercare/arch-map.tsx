import type { CSSProperties } from 'react';
import type { Arch } from '@archwright/contracts';
import { aftercareWords as words } from '../words/aftercare.js';
import type { RegionState } from './aftercare-view.js';
import { BUTTON, DRAWING, RIDGE } from './region-places.js';

interface Props {
  arch: Arch;
  regions: readonly RegionState[];
  chosen: RegionState | null;
  /** Null where the person may only look. */
  onChoose: ((region: RegionState) => void) | null;
}

/** State by shape: a diamond counts open spots, a tick healed ones. */
export function RegionCount({ open, healed }: Pick<RegionState, 'open' | 'healed'>) {
  return (
    <>
      {open > 0 ? <span className="region-open">{`◆ ${String(open)}`}</span> : null}
      {healed > 0 ? <span className="region-healed">{`✓ ${String(healed)}`}</span> : null}
    </>
  );
}

/** One arch as one looks at the patient, a button on every region. */
export function ArchMap({ arch, regions, chosen, onChoose }: Props) {
  return (
    <div className="stack-tight">
      <h3 id={`arch-${arch}`}>{words.arch[arch]}</h3>
      <div
        className="arch-map"
        role="group"
        aria-labelledby={`arch-${arch}`}
        style={{ width: DRAWING.width, height: DRAWING.height }}
      >
        <svg width={DRAWING.width} height={DRAWING.height} aria-hidden="true">
          <path d={RIDGE[arch]} className="arch-ridge" />
        </svg>
        <span className="arch-side arch-right small soft">{words.right}</span>
        <span className="arch-side arch-left small soft">{words.left}</span>
        {regions.map((region) => (
          <button
            key={region.region}
            type="button"
            className="region"
            style={placeOf(region)}
            aria-label={region.name}
            aria-pressed={chosen?.arch === arch && chosen.region === region.region}
            disabled={onChoose === null}
            onClick={() => onChoose?.(region)}
          >
            {region.words}
            <RegionCount open={region.open} healed={region.healed} />
          </button>
        ))}
      </div>
    </div>
  );
}

const placeOf = ({ x, y }: RegionState): CSSProperties => ({
  left: x - BUTTON.width / 2,
  top: y - BUTTON.height / 2,
  width: BUTTON.width,
  height: BUTTON.height,
});
