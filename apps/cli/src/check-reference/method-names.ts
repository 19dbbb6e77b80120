/** Names of reference cases for what the command line calls by the field's standard term. */
const CASE_NAMES: Readonly<Record<string, string>> = {
  'generalized-esd': 'gesd',
  'modified-z': 'modifiedZ',
  hampel: 'hampelFilter',
  boxplot: 'boxplotFences',
  mcd: 'mcdReweighted',
  'individuals-chart': 'individualsMovingRange',
  'bland-altman': 'blandAltman',
  'duplicate-error': 'duplicateError',
  repeatability: 'repeatabilityReproducibility',
  'theil-sen': 'robustLine',
};

/** A case may name its method either way. */
export const caseName = (method: string): string =>
  (Object.hasOwn(CASE_NAMES, method) ? CASE_NAMES[method] : undefined) ?? method;
