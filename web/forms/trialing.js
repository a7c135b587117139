// Many trials at once, and the acceptance of a fit.
import { day, group, likely, pick, prose, refs, text } from './field.js';

export const together = [
  pick('technique', 'Technique', refs('techniques')), text('material', 'Material'), day('done_on', 'Done on'),
  text('setting', 'Setting of the tool', { hint: 'Where the fourth column names none.' }),
  prose('lines', 'Thickness in mm, length in mm, minutes, setting', { hint: 'One trial a line, columns parted by tabs or semicolons: paste them from a table.', wide: true }),
];

export const accepting = [
  text('accepted_by', 'Accepted by'), day('accepted_on', 'On'),
  likely('field_factor', 'Speed in the field ÷ speed in the trial', 'times', { hint: 'The same cut, remote and under water, against the trial on cold metal.' }),
  prose('reason', 'Why these trials stand for the work', { wide: true }),
  group('beside', 'Keep the old technique and make a new one beside it', [text('as_code', 'Code of the new technique'), text('as_name', 'Its name')], { maybe: true, start: false }),
];
