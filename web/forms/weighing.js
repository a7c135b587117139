// What decision aids are asked: options with cost and doses, the value of dose, what else counts.
import { group, number, pick, rows, text, tick } from './field.js';

const kind = is => ({ when: draft => draft.kind.text === is });
const notBands = { when: draft => draft.kind.text !== 'bands' };
const band = [number('up_to_usv', 'Up to', 'mSv', { power: 3, sent: 'µSv', maybe: true, hint: 'The last may stay blank.' }), number('per_person_sv', 'Per person-Sv', '')];

export const weighing = [
  text('currency', 'Currency', { hint: 'Three letters, such as EUR. Every sum of money is in it, of one price year.' }),
  rows('options', 'Options', 'option', [
    { type: 'code', name: 'code', label: 'Code' }, text('name', 'Name'), number('cost', 'Cost', ''),
    rows('doses', 'Who takes the dose', 'group', [text('name', 'Group'), number('person_usv', 'Together', 'person-mSv', { power: 3, sent: 'person-µSv' }), number('individual_usv', 'One of them', 'mSv', { power: 3, sent: 'µSv' })], { line: true }),
    rows('scores', 'Scores', 'score', [{ type: 'code', name: 'attribute', label: 'Attribute' }, number('value', 'Score', '')], { line: true }),
  ]),
  group('alpha', 'Value of a person-sievert (α)', [
    pick('kind', 'It is', [['value', 'one value'], ['bands', 'by bands of individual dose'], ['power', 'rising with individual dose']]),
    number('per_person_sv', 'Per person-Sv', '', { maybe: true, ...notBands }),
    number('d0_usv', 'Rises from', 'mSv', { power: 3, sent: 'µSv', maybe: true, ...kind('power') }), number('exponent', 'Exponent of aversion', '', { maybe: true, ...kind('power') }),
    rows('bands', 'Bands', 'band', band, { line: true, ...kind('bands') }),
  ], { hint: 'Published values differ by more than ten times; the table below has them with their sources.' }),
  rows('betas', 'Added by individual dose (β), for the extended form', 'band', band, { line: true }),
  rows('attributes', 'What else counts', 'attribute', [{ type: 'code', name: 'code', label: 'Code' }, text('name', 'Name'), tick('more_is_better', 'More is better')], { line: true }),
  rows('criteria', 'Weights, for utility and outranking', 'weight', [{ type: 'code', name: 'of', label: 'Of', hint: 'cost, collective-dose, highest-individual or an attribute.' }, number('weight', 'Weight', '')], { line: true }),
  number('concordance', 'Least weight that must agree', '', { maybe: true, hint: '0.5 to 1; blank: 0.7, a judgement.' }),
  number('discordance', 'Largest drawback borne', '', { maybe: true, hint: 'Part of a range, 0 to 1; blank: 0.3, a judgement.' }),
];

/** Two options to type over. */
export const firstWeighing = currency => ({
  currency, options: [option('a', 'Option A'), option('b', 'Option B')], alpha: { kind: 'value' }, betas: [], attributes: [],
  criteria: [{ of: 'cost', weight: 1 }, { of: 'collective-dose', weight: 1 }, { of: 'highest-individual', weight: 1 }],
});
const option = (code, name) => ({ code, name, doses: [{ name: 'everybody' }], scores: [] });

/** The options of a finished run, by their means: what the forms start with. Without a cost an option leaves that field open. */
export function optionsOfRun(result) {
  return (result?.options ?? []).filter(each => each.person_usv?.mean !== undefined && each.highest_usv?.mean !== undefined).map(each => ({
    code: each.code, name: each.name, ...(each.cost?.mean === undefined ? {} : { cost: each.cost.mean }),
    doses: [{ name: 'everybody', person_usv: each.person_usv.mean, individual_usv: each.highest_usv.mean }], scores: [],
  }));
}
