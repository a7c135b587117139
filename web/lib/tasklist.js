// Which tasks are shown, and in which order.
const VALUE = {
  name: task => task.name, start: task => task.start_hour, hours: task => task.hours, people: task => task.person_hours, dose: task => task.person_usv,
  highest: task => task.highest?.usv ?? 0, stay: task => task.stay?.hours ?? Infinity, float: task => task.float_hours,
};

export function firstState(search) {
  const by = VALUE[search.get('sort')] ? search.get('sort') : 'start';
  return { text: search.get('task') ?? '', group: search.get('group') ?? '', component: search.get('component') ?? '', by, down: by !== 'start' && by !== 'name', from: 0, open: new Set() };
}

export function picked(tasks, { text, group, component }, camp) {
  const words = text.trim().toLowerCase();
  return tasks.filter(task => (group === '' || task.group === group) && (component === '' || task.component === component)
    && (words === '' || `${task.id} ${task.name} ${task.group} ${camp.byCode.components.get(task.component)?.name ?? ''}`.toLowerCase().includes(words)));
}

export function ordered(tasks, { by, down }) {
  const value = VALUE[by];
  const sign = down ? -1 : 1;
  return [...tasks].sort((a, b) => {
    const [one, other] = [value(a), value(b)];
    return sign * (one < other ? -1 : one > other ? 1 : 0) || a.start_hour - b.start_hour;
  });
}
