// The only rounding and conversion. JSON carries µSv, person-µSv, h, mm, Bq; people read mSv, person-mSv, h and min, GBq.
const LEAST = 1e-6;
const GAP = '\u202f';
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
export const NOT_KNOWN = 'not known';

/** Significant digits, never in powers of ten; 10 000 and more with narrow gaps. */
export function sig(value, digits = 3) {
  if (!Number.isFinite(value)) return NOT_KNOWN;
  if (value === 0) return '0';
  if (Math.abs(value) < LEAST) return '<0.000001';
  const exponent = Math.floor(Math.log10(Math.abs(Number(value.toPrecision(digits)))));
  return grouped(value.toFixed(Math.min(8, Math.max(0, digits - 1 - exponent))));
}

/** As many decimals as asked for; what would vanish says "<". */
export function fixed(value, decimals) {
  if (!Number.isFinite(value)) return NOT_KNOWN;
  const least = 10 ** -decimals;
  if (value > 0 && value < least / 2) return `<${least.toFixed(decimals)}`;
  return grouped(value.toFixed(decimals));
}

/** Decimals with which the largest of a column shows about three digits. */
export function decimalsFor(values) {
  const top = Math.max(0, ...values.filter(Number.isFinite));
  return top <= 0 ? 0 : Math.min(4, Math.max(0, 2 - Math.floor(Math.log10(top))));
}

export const toMsv = usv => usv / 1000;
export const msv = (usv, digits) => sig(usv / 1000, digits);
export const msvFixed = (usv, decimals) => fixed(usv / 1000, decimals);
export const percent = part => `${plain(shift(part, 2))} %`;
/** A dose rate: two digits are enough below 1 µSv/h. */
export const rate = usvPerH => sig(usvPerH, usvPerH < 1 ? 2 : 3);
/** A dose rate with the unit that people read it in. */
export const doseRate = usvPerH => (usvPerH >= 1e6 ? `${sig(usvPerH / 1e6)} Sv/h` : usvPerH >= 1000 ? `${sig(usvPerH / 1000)} mSv/h` : `${rate(usvPerH)} µSv/h`);
/** Millimetres as metres. */
export const metres = mm => `${sig(mm / 1000)} m`;
/** A place in metres as the server worked it out, without noise. */
export const at = metre => `${digits(metre, 4)} m`;
/** A water level that must not be undercut, to a whole mm on the safe side. */
export const levelUp = mm => `${digits(Math.abs(Math.ceil(mm)))} mm ${Math.ceil(mm) < 0 ? 'below' : 'above'} the normal water`;
/** A dose that somebody typed, with the digits that were typed. */
export const msvTyped = usv => plain(shift(usv, -3));

/** The same number without rounding noise: for a value that somebody typed. */
export const plain = value => (Number.isFinite(value) ? String(Number(value.toPrecision(12))) : NOT_KNOWN);

/** At most so many significant digits, without trailing zeros: for the factors of a product. */
export function digits(value, most = 5) {
  return Number.isFinite(value) ? grouped(noExponent(Number(value.toPrecision(most)))) : NOT_KNOWN;
}

/** How long somebody may stay; past 1000 h the figure says nothing more. */
export const stay = hours => (hours >= 1000 ? 'over 1000 h' : duration(hours));

/** A time as people say it: "18 min", "2 h 40 min", "120 h". */
export function duration(hours) {
  if (!Number.isFinite(hours)) return NOT_KNOWN;
  if (hours >= 100) return `${sig(hours)} h`;
  const minutes = Math.round(hours * 60);
  if (minutes < 1) return hours > 0 ? 'under 1 min' : '0 min';
  const h = Math.floor(minutes / 60);
  const m = minutes % 60;
  return h === 0 ? `${m} min` : m === 0 ? `${h} h` : `${h} h ${m} min`;
}

/** An activity in the unit that gives the shortest number. */
export function activity(becquerel) {
  if (!Number.isFinite(becquerel)) return NOT_KNOWN;
  for (const [power, unit] of [[15, 'PBq'], [12, 'TBq'], [9, 'GBq'], [6, 'MBq'], [3, 'kBq']]) {
    if (becquerel >= 10 ** power) return `${sig(becquerel / 10 ** power)} ${unit}`;
  }
  return `${sig(becquerel)} Bq`;
}

/** 2027-03-01 as "1 Mar 2027"; no time zone can move it. */
export function day(iso) {
  const [year, month, date] = iso.split('-').map(Number);
  return `${date} ${MONTHS[month - 1]} ${year}`;
}
export function dayShort(iso) {
  const [, month, date] = iso.split('-').map(Number);
  return `${date} ${MONTHS[month - 1]}`;
}
export const monthName = index => MONTHS[index];
export const dayNumber = iso => Date.parse(`${iso}T00:00:00Z`) / 86400000;
export const isoOf = number => new Date(number * 86400000).toISOString().slice(0, 10);

/** 1 µSv/h is step 1, more than 100 is step 5. */
export const heat = usvPerH => [5, 25, 50, 100].filter(edge => usvPerH >= edge).length + 1;

/** Moves the decimal point without rounding: 4.35 by 2 is 435. */
export function shift(value, power) {
  const [digits, exponent] = String(value).toLowerCase().split('e');
  return Number(`${digits}e${Number(exponent ?? 0) + power}`);
}

const noExponent = value => (Math.abs(value) >= 1e-6 || value === 0 ? String(value) : value.toFixed(12).replace(/0+$/, ''));

function grouped(text) {
  const [whole, rest] = text.split('.');
  const digits = whole.replace('-', '');
  const spaced = digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, GAP);
  return (whole.startsWith('-') ? '−' : '') + spaced + (rest === undefined ? '' : `.${rest}`);
}
