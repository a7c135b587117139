// How often tools fail, in words. The figures are the server's.
import { eightInTen } from './dots.js';
import { sig } from './units.js';

/** "About 13; 8 in 10: 6 to 22"; one end where both are the same. */
export function oftenWords(number) {
  const [low, high] = eightInTen(number);
  return `About ${sig(number.mean, 2)}; 8 in 10: ${low === high ? low : `${low} to ${high}`}`;
}

/** @returns {string} one line on the faults of a run, "" where none are drawn */
export function faultLine(faults) {
  if (!faults) return '';
  const each = faults.techniques.length > 1 ? `. ${faults.techniques.map(({ name, number }) => `${name}: ${lower(oftenWords(number))}`).join('. ')}` : '';
  return `Faults to be cleared while cutting: ${lower(oftenWords(faults.number))}${each}.`;
}

const lower = words => words.charAt(0).toLowerCase() + words.slice(1);
