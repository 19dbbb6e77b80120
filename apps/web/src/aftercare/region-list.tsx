import { aftercareWords as words } from '../words/aftercare.js';
import type { RegionState } from './aftercare-view.js';
import { RegionCount } from './arch-map.js';

interface Props {
  regions: readonly RegionState[];
  onChoose: ((region: RegionState) => void) | null;
}

/** The drawing in words, for those who would rather read than aim. */
export function RegionList({ regions, onChoose }: Props) {
  return (
    <details className="details">
      <summary>{words.asList}</summary>
      <ul className="region-list">
        {regions.map((region) => (
          <li key={`${region.arch} ${region.region}`}>
            <button type="button" disabled={onChoose === null} onClick={() => onChoose?.(region)}>
              {words.place(region.arch, region.region)}
              <RegionCount open={region.open} healed={region.healed} />
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
