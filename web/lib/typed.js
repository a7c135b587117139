// What somebody typed as a number. Comma and point both part the decimals; a possible thousands separator is asked about, never guessed.
const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d{1,3})?$/i;
const THOUSANDS = /^[+-]?[1-9]\d{0,2}([.,]\d{3})+$/;
const SPACED = /^[+-]?\d{1,3}([\s\u00a0\u202f']\d{3})+([.,]\d+)?$/;

/** @returns {{value: number}|{fault: string}|{blank: true}} */
export function typed(text) {
  const given = text.trim();
  if (given === '') return { blank: true };
  if (SPACED.test(given)) {
    return { fault: `must be written without gaps. Did you mean ${given.replace(/[\s\u00a0\u202f']/g, '')}?` };
  }
  if (THOUSANDS.test(given)) {
    const whole = given.replace(/[.,]/g, '');
    const once = given.match(/[.,]/g).length === 1;
    return { fault: once ? `could be ${given.replace(',', '.')}0 or ${whole}. Write one of these two.` : `must be written without separators. Did you mean ${whole}?` };
  }
  const value = Number(given.replace(',', '.'));
  if (!NUMBER.test(given) || !Number.isFinite(value)) return { fault: `must be a number, like 42 or 4.2. You typed "${given.slice(0, 40)}".` };
  return { value };
}
