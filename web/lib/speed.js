// How fast a technique cuts, in one line, in whichever of the ways it is given.
import { plain } from './units.js';

export const three = ({ low, likely, high }, unit = '') => `${low === high ? plain(likely) : `${plain(low)}, ${plain(likely)}, ${plain(high)}`}${unit && ` ${unit}`}`;

export function speedWords({ area_rate_cm2_per_min: rate, speed_table: table, speed }) {
  if (rate) return three(rate, 'cm²/min');
  if (table?.length > 0) return `table of ${table.length} readings in mm/min`;
  if (speed?.jet) return `jet of ${plain(speed.jet.pump_pressure_mpa)} MPa with ${plain(speed.jet.abrasive_kg_per_min)} kg/min abrasive`;
  if (speed?.travel) return three(speed.travel.mm_per_min, 'mm/min');
  if (speed?.strokes) return three(speed.strokes.per_hour, 'strokes/h');
  if (speed?.drilling) return three(speed.drilling.feed_mm_per_min, 'mm/min, drilled');
  if (speed?.trials) return `fitted to ${speed.trials.points} trials`;
  return 'not given';
}
