// Rows pasted from a table: thickness, length, minutes and, if there is a fourth column, the setting. A comma parts decimals, so columns are parted by tabs or semicolons.
import { typed } from './typed.js';

const NAMES = ['thickness', 'length', 'minutes'];

/** @returns {{line: number, text: string, value?: object, fault?: string}[]} one per line that holds something; a first line of words is a heading */
export function pasted(text) {
  const lines = text.split(/\r?\n/).map((line, i) => ({ line: i + 1, text: line })).filter(({ text: line }) => line.trim() !== '');
  return lines.map(read).filter((row, i) => !(i === 0 && row.heading)).map(({ heading, ...row }) => row);
}

function read({ line, text }) {
  const cells = text.split(/\t|;/).map(cell => cell.trim());
  if (cells.length < 3) return { line, text, fault: `line ${line} has ${cells.length === 1 ? '1 column' : `${cells.length} columns`}. Give thickness, length and minutes, parted by tabs or semicolons.` };
  const found = cells.slice(0, 3).map(typed);
  const wrong = found.findIndex(each => each.value === undefined);
  if (wrong >= 0) {
    const why = found[wrong].blank ? 'is missing. Give it a value.' : found[wrong].fault;
    return { line, text, heading: found.every(each => each.value === undefined), fault: `line ${line}: ${NAMES[wrong]} ${why}` };
  }
  const [thickness, length, minutes] = found.map(each => each.value);
  return { line, text, value: { thickness_mm: thickness, length_mm: length, minutes, setting: cells[3] ?? '' } };
}
