// What the log page works out by itself: weeks, keys, the entry.
const { week } = await load('/lib/tablet.js');
const { emptyDraft, made, pressed } = await load('/lib/logdraft.js');
const { mine, set } = await load('/lib/who.js');

// BY HAND: 25 November 2026 is a Wednesday; 29 November a Sunday; 1 January 2027 a Friday.
test('a_week_goes_from_monday_to_sunday', () => {
  equal(week('2026-11-25'), ['2026-11-23', '2026-11-29']);
  equal(week('2026-11-29'), ['2026-11-23', '2026-11-29']);
  equal(week('2026-11-30'), ['2026-11-30', '2026-12-06']);
  equal(week('2027-01-01'), ['2026-12-28', '2027-01-03']);
});

// LAW: a step goes with an entry only when it was chosen.
test('a_step_is_optional', () => {
  const ranges = { most_usv: 100000, most_usv_per_h: 1e7, most_hours: 12, longest_remark: 500 };
  const draft = { ...emptyDraft(), worker: 'W1', task: 'a/b/c', area: 'pool', dose: '4,2' };
  equal('step' in made(draft, ranges).entry, false);
  equal(made({ ...draft, step: 'place' }, ranges).entry.step, 'place');
  equal(made(draft, ranges).entry.usv, 4.2);
  equal(pressed('4,', '2'), '4,2');
});

// LAW: what is kept belongs to who wrote it, and to all where that was not noted.
test('nobody_sends_in_the_name_of_another', () => {
  set({ account: { id: 7 } });
  equal([mine({ by: { id: 7 } }), mine({ by: { id: 8 } }), mine({})], [true, false, true]);
  set(null);
});
