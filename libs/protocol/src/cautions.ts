/** A place where work can hurt someone. Local codes and licensed practice decide; the text only reminds. */
export interface Caution {
  readonly code: string;
  readonly hazard: string;
  readonly text: string;
  readonly source: string;
}

const PRACTICE = 'common practice, no source';

/** Caution texts shown before a stage starts, by code. */
export const cautions: readonly Caution[] = [
  {
    code: 'aspiration',
    hazard: 'Swallowing or inhaling impression material, a loose tray, a small part, a tooth or a housing',
    text: 'Seat upright, head forward, tray stable, little thin material at the back, suction at hand. Higher risk: trouble swallowing, neurologic disease, sedation, gagging. A swallowed or inhaled item is an emergency: follow that pathway and keep the fragment.',
    source: PRACTICE,
  },
  {
    code: 'intraoral-tracing',
    hazard: 'Tracing inside the mouth with a needle mounted',
    text: 'Explain the injury risk before mounting. Raise the needle only after seating. Small movements first; tongue, lip and cheek clear; no closing while talking. Check plate edges. Stop on pain. Remove the set before the patient is moved. Count parts in and out.',
    source: PRACTICE,
  },
  {
    code: 'material-allergy',
    hazard: 'Allergy to methacrylate, eugenol, latex, nickel, polyether or flavours',
    text: 'Ask and record before a material is chosen; block that material and use an alternative.',
    source: PRACTICE,
  },
  {
    code: 'monomer-and-heat',
    hazard: 'Monomer and heat at a chairside reline or attachment pick-up',
    text: 'No uncured monomer on mucosa; take out in time and rinse; block undercuts; ventilate. Gloves do not stop monomer.',
    source: PRACTICE,
  },
  {
    code: 'locked-denture',
    hazard: 'Resin under a housing or in an undercut locks the denture in the mouth',
    text: 'Block out completely before the pick-up. A locked or over-retentive denture, or a raised vertical dimension: stop.',
    source: PRACTICE,
  },
  {
    code: 'infection',
    hazard: 'Impressions and returned work carry infection',
    text: 'Rinse until clean, disinfect for the maker’s contact time, bag, and state agent and time. Tell the laboratory, so that it is not disinfected twice. Visible blood: send back. Every arrival counts as contaminated.',
    source: 'Scottish dental guidance, disinfection before dispatch; regulator and laboratory guidance pages',
  },
  {
    code: 'extraction-and-anticoagulants',
    hazard: 'Bleeding after extraction with anticoagulant or antiplatelet medicines',
    text: 'Ask medicine, dose and time. Do not stop it without the prescriber’s advice. Appointment early in the day; INR in date for warfarin. Persistent bleeding followed 13.5 % of 111 procedures on direct agents.',
    source: 'Patel, British Dental Journal (82 patients, 111 procedures)',
  },
  {
    code: 'osteonecrosis',
    hazard: 'Antiresorptive or anti-angiogenic medicines, radiation of head or neck',
    text: 'Osteonecrosis risk before extraction, implants or sharp flanges: ask, and refer to a specialist.',
    source: PRACTICE,
  },
  {
    code: 'general-health',
    hazard: 'Diabetes, bleeding disorder, endocarditis risk, pregnancy, pacemaker with electronic devices',
    text: 'Ask and follow local rules.',
    source: PRACTICE,
  },
  {
    code: 'persistent-sore',
    hazard: 'Sore or ulcer for more than two weeks after adjustment',
    text: 'Refer: it is not a denture problem until shown otherwise.',
    source: PRACTICE,
  },
  {
    code: 'soft-liner-and-adhesive',
    hazard: 'Soft liner, adhesive with zinc, wearing at night',
    text: 'Advise by the maker’s instructions.',
    source: PRACTICE,
  },
  {
    code: 'informed-consent',
    hazard: 'Treatment that the patient did not understand or want',
    text: 'Explain treatment and alternatives (none, implants), number of visits, cost and expected adaptation; of an immediate denture its looser fit, relines and likely remake. Ask about capacity, companion and interpreter.',
    source: PRACTICE,
  },
  {
    code: 'identifying-pictures',
    hazard: 'Photographs and face scans identify the patient',
    text: 'Ask consent; the laboratory gets case code, arch and tooth data only, as far as it can work with that.',
    source: PRACTICE,
  },
  {
    code: 'two-identifiers',
    hazard: 'Wrong patient or wrong side',
    text: 'Two identifiers at each hand-over; the patient’s own left and right; ISO 3950 tooth numbers.',
    source: PRACTICE,
  },
];
