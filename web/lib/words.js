// Plain words for what the server names shortly.
const STATUS = {
  measured: 'measured here', seen: 'read in the source', computed: 'worked out', memory: 'from memory', judgement: 'judgement', invented: 'invented',
};
const ASSUMED = new Set(['memory', 'judgement', 'invented']);
const VERDICT = { within: 'within', 'over-constraint': 'above a constraint', 'not-known': 'cannot be told', 'over-limit': 'above a limit' };
const DRIVER = {
  campaign: ['time for the campaign', 'times for the campaign'], component: ['component', 'components'], package: ['package', 'packages'], piece: ['piece', 'pieces'],
  cut: ['cut', 'cuts'], metre: ['metre cut', 'metres cut'], 'tool-on-hour': ['tool-on hour', 'tool-on hours'], 'tool-change': ['tool change', 'tool changes'],
  fault: ['fault', 'faults'],
  'kg-abrasive': ['kg abrasive', 'kg abrasive'], filter: ['filter', 'filters'], drum: ['drum', 'drums'], shift: ['shift', 'shifts'], week: ['week', 'weeks'],
  'wait-hour': ['hour until the water is clear', 'hours until the water is clear'], count: ['time', 'times'],
};
const FIGURE = {
  quantity: 'quantity', 'hours-each': 'hours each', difficulty: 'difficulty', hours: 'hours', people: 'people', presence: 'presence', 'usv-per-h': 'dose rate',
};

export const statusWord = status => STATUS[status] ?? status;
export const assumed = status => ASSUMED.has(status);
export const verdictWord = verdict => VERDICT[verdict] ?? verdict;
export const driverWord = (driver, count) => (DRIVER[driver] ?? [driver, driver])[count === 1 ? 0 : 1];
export const figureWord = figure => FIGURE[figure] ?? figure;
export const plural = (count, one, many = `${one}s`) => `${count} ${count === 1 ? one : many}`;
export const sentence = words => words.charAt(0).toUpperCase() + words.slice(1);
/** A sentence as a heading: no full stop, and a per cent sign that stays with its number. */
export const heading = words => words.replace(/\.$/, '').replace(/(\d) %/g, '$1\u00a0%');
export const wordOf = code => sentence(code.replace(/-/g, ' '));

/** "Pool edge" for the area pool-edge; the code itself where nothing has that code. */
export const nameOf = (camp, kind, code) => camp.byCode[kind]?.get(code)?.name ?? code;
