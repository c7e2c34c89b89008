// Reading a season: one day in words, and the first of every month as a table.

import { dayAfter, dayWords, daysBetween, element, figure } from './dom.js';

/** One day in words. */
export function dayText(season, day) {
  const { bees, brood, onBees, inBrood, infestation } = season.series;
  const name = dayWords(dayAfter(season.start, day));
  if (day >= bees.length) {
    return `${name}: ${season.beyond === 'lost' ? 'the colony is lost' : 'not shown'}.`;
  }
  const all = onBees[day] + inBrood[day];
  const hidden = all > 0 ? ` (${Math.round((100 * inBrood[day]) / all)} % of all)` : '';
  return `${name}: ${figure(bees[day])} bees, ${figure(brood[day])} capped cells; `
    + `${figure(onBees[day])} mites on bees and ${figure(inBrood[day])} in brood${hidden}. `
    + `A wash of 300 finds about ${Math.round(infestation[day] * 3).toLocaleString('en-US')}.`;
}

/** Fills the table with the first of every month. */
export function fillMonths(body, season) {
  const { bees, brood, onBees, inBrood, infestation } = season.series;
  const rows = [];
  const days = daysBetween(season.start, season.end);
  for (let day = 0; day <= days; day += 1) {
    const iso = dayAfter(season.start, day);
    if (iso.endsWith('-01')) {
      const row = element('tr');
      const head = element('th', `${dayWords(iso)} ${iso.slice(0, 4)}`);
      head.scope = 'row';
      row.append(head);
      [bees, brood, onBees, inBrood, infestation].forEach((values) => {
        row.append(element('td', day < values.length ? figure(values[day]) : season.beyond));
      });
      rows.push(row);
    }
  }
  body.replaceChildren(...rows);
}
