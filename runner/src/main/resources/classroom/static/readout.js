// Reading a season: one day in words, and the first of every month as a table.

import { dayAfter, dayWords, daysBetween, element, figure } from './dom.js';

const MOST = 50; // mites per 100 bees; more no wash tells apart

/** Mites per 100 bees, never more than a wash can tell. */
function perHundred(value) {
  return value > MOST ? `more than ${MOST}` : figure(value);
}

/** One day of a scenario in words. */
export function dayText(picture, scenario, day) {
  const { onBees, inWorker, inDrone, infestation } = scenario.series;
  const name = `${dayWords(dayAfter(picture.start, day))}, season ${scenario.letter}`;
  if (day >= onBees.length) {
    return `${name}: ${scenario.beyond === 'lost' ? 'the colony is more likely dead than alive' : 'not shown'}.`;
  }
  return `${name}: ${figure(onBees[day])} mites on bees, ${figure(inWorker[day])} in worker cells, `
    + `${figure(inDrone[day])} in drone cells; ${perHundred(infestation[day])} per 100 bees.`;
}

/** Fills the table with the first of every month. */
export function fillMonths(body, picture, scenario) {
  const { bees, onBees, inWorker, inDrone, infestation } = scenario.series;
  const rows = [];
  const days = daysBetween(picture.start, picture.end);
  for (let day = 0; day <= days; day += 1) {
    const iso = dayAfter(picture.start, day);
    if (iso.endsWith('-01')) {
      const row = element('tr');
      const head = element('th', `${dayWords(iso)} ${iso.slice(0, 4)}`);
      head.scope = 'row';
      row.append(head);
      [bees, onBees, inWorker, inDrone].forEach((values) => {
        row.append(element('td', day < values.length ? figure(values[day]) : scenario.beyond));
      });
      row.append(element('td', day < infestation.length ? perHundred(infestation[day]) : scenario.beyond));
      rows.push(row);
    }
  }
  body.replaceChildren(...rows);
}
