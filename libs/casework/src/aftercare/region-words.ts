type Arch = 'upper' | 'lower';
type Side = 'left' | 'right' | 'midline';

/** The patient's side of a region of the map. */
export function sideOf(region: string): Side {
  if (region.endsWith('-left')) return 'left';
  return region.endsWith('-right') ? 'right' : 'midline';
}

/** A place of the map as people say it: "lower ridge left". */
export const placeWords = (arch: Arch, region: string): string => `${arch} ${region.replaceAll('-', ' ')}`;
