// Days of a year on a line, and a strip of months on which things stand at their days.

import { element } from './dom.js';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DAY = 86400000;

/** Days from the first of January to a day of the year such as 05-10, in a year of 365 days. */
export function dayOfYear(monthDay) {
  return Math.round((Date.parse(`2025-${monthDay === '02-29' ? '02-28' : monthDay}`)
    - Date.parse('2025-01-01')) / DAY);
}

/** The day of the year, such as 05-10, so many days after the first of January. */
export function monthDay(day) {
  const wrapped = ((Math.round(day) % 365) + 365) % 365;
  return new Date(Date.parse('2025-01-01') + wrapped * DAY).toISOString().slice(5, 10);
}

/** "10 May" of 05-10 or of 2026-05-10. */
export function words(day) {
  const short = day.slice(-5);
  return `${Number(short.slice(3))} ${MONTHS[Number(short.slice(0, 2)) - 1]}`;
}

/** Puts an element at a share of the width, which may go on for some of it. */
export function place(node, from, to) {
  node.style.left = `${(100 * from).toFixed(2)}%`;
  if (to !== undefined) {
    node.style.width = `${Math.max(0.6, 100 * (to - from)).toFixed(2)}%`;
  }
}

/** A strip of months between two days; rows are added with `row`. */
export function strip(first, last) {
  const box = element('div', '', 'strip');
  const begin = Date.parse(first);
  const span = Math.max(DAY, Date.parse(last) - begin);
  const share = (iso) => Math.min(1, Math.max(0, (Date.parse(iso) - begin) / span));
  const months = element('div', '', 'months');
  months.setAttribute('aria-hidden', 'true');
  const start = new Date(begin);
  const every = span > 1000 * DAY ? 12 : span > 500 * DAY ? 3 : 1;
  for (let m = 0; m < 200; m += every) {
    const month = new Date(Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + m, 1));
    if (month.getTime() > begin + span) {
      break;
    }
    if (month.getTime() >= begin) {
      const name = MONTHS[month.getUTCMonth()];
      const label = element('span', month.getUTCMonth() === 0 ? `${month.getUTCFullYear()}` : name);
      place(label, (month.getTime() - begin) / span);
      months.append(label);
    }
  }
  box.append(months);
  return {
    box,
    row(name, items) {
      const line = element('div', '', 'strip-row');
      line.append(element('span', name, 'strip-name'));
      const track = element('div', '', 'track');
      for (const item of items) {
        const mark = element('span', item.words, `flag ${item.kind ?? ''}`);
        mark.title = `${words(item.from)}: ${item.words}`;
        const at = share(item.from);
        if (at > 0.7) {
          mark.classList.add('leftward');
          mark.style.right = `${(100 * (1 - at)).toFixed(2)}%`;
        } else {
          place(mark, at);
        }
        track.append(mark);
      }
      line.append(track);
      box.append(line);
    },
  };
}
