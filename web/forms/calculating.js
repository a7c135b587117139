// Questions about cutting that are answered without anything being stored.
import { group, likely, number, pick, tick, whole } from './field.js';

const techniques = ({ handbook }) => handbook.techniques.map(({ technique }) => [technique.code, technique.name]);
const materials = ({ handbook }) => handbook.materials.map(each => [each.code, each.name]);
const hasJet = (draft, handbook) => handbook.techniques.find(({ technique }) => technique.code === draft.technique_code.text)?.technique.speed?.jet !== undefined;

/** @param handbook techniques and materials of the tables; {@code unit} bar or MPa for the pressure */
export function calculating(handbook, unit) {
  const known = { handbook };
  const jet = { when: (draft, root) => hasJet(root, handbook) };
  return [
    pick('technique_code', 'Technique', () => techniques(known)), pick('material', 'Material', () => materials(known)),
    number('thickness_mm', 'Thickness', 'mm'), number('length_mm', 'Length of a cut', 'mm'), whole('count', 'How many', { maybe: true, hint: 'Blank: 1.' }),
    pick('medium', 'Cut in', [['water', 'water'], ['air', 'air']], { maybe: true }), number('depth_m', 'Water above the cut', 'm', { maybe: true }),
    group('parameters', 'Settings of the jet', [
      unit === 'bar' ? number('pressure_bar', 'Pump pressure', 'bar', { maybe: true }) : number('pressure_mpa', 'Pump pressure', 'MPa', { maybe: true }),
      number('orifice_mm', 'Orifice', 'mm', { maybe: true }), number('tube_mm', 'Focusing tube', 'mm', { maybe: true }), number('abrasive_kg_per_min', 'Abrasive', 'kg/min', { maybe: true }),
      likely('separation', 'Separation factor', 'times', { maybe: true }), likely('submergence', 'Speed under water ÷ in air', 'times', { maybe: true }),
      group('hose', 'Supply hose', [number('length_m', 'Length', 'm'), number('bore_mm', 'Bore', 'mm')], { maybe: true, start: false }), tick('pierced', 'Starts inside the plate, so it is pierced first'),
    ], { ...jet, maybe: true, start: false, hint: 'What is left blank stays as in the handbook.' }),
  ];
}

export const feeding = [
  number('from_kg_per_min', 'Abrasive from', 'kg/min'), number('to_kg_per_min', 'Abrasive to', 'kg/min'),
  group('prices', 'What a metre costs', [
    number('per_hour', 'An hour of the crew and the rig', ''), number('person_usv_per_h', 'Collective dose in an hour', 'person-µSv'), number('per_person_usv', 'A person-µSv', ''),
    number('per_kg_bought', 'A kg of abrasive bought', ''), number('per_kg_waste', 'A kg of waste', ''),
  ], { hint: 'Any one currency; at least one price.' }),
];
