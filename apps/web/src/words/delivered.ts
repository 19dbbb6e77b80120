import { readerOf } from './delivered/delivered.js';
import { language } from './language.js';

const FETCHED = { de: () => import('./delivered/de.js'), ar: () => import('./delivered/ar.js') };

/** A text that came with the product, in the language of the page. */
export const delivered: (text: string) => string =
  language === 'en' ? (text) => text : readerOf((await FETCHED[language]()).delivered);
