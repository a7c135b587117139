// A moment as people write it, in the time of this computer: "21 Oct 2027, 09:42".
const FORMAT = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', hour: '2-digit', minute: '2-digit' });

export const moment = text => FORMAT.format(new Date(text));
