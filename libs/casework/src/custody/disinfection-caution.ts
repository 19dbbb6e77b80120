import { cautions } from '@archwright/protocol';

const infection = cautions.find(({ code }) => code === 'infection');
if (infection === undefined) throw new Error('There is no caution about infection.');

/** Shown wherever disinfection is declared, packed or unpacked. */
export const disinfectionCaution = {
  text: `A declaration is not a proof. ${infection.text} Your own infection-control rules decide.`,
  source: infection.source,
};
