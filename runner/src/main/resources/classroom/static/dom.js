// Small helps: elements, days, numbers, and asking the engine.

export const SVG = 'http://www.w3.org/2000/svg';
const DAY = 86400000;
const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August',
  'September', 'October', 'November', 'December'];

/** An HTML element with text. */
export function element(name, text = '', className = '') {
  const made = document.createElement(name);
  made.textContent = text;
  if (className) {
    made.className = className;
  }
  return made;
}

/** An SVG element with attributes, put into a parent. */
export function draw(parent, name, attributes, text = '') {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    made.setAttribute(key, typeof value === 'number' ? Math.round(value * 10) / 10 : value);
  }
  made.textContent = text;
  parent.append(made);
  return made;
}

/** Days from one ISO date to another. */
export function daysBetween(from, to) {
  return Math.round((Date.parse(to) - Date.parse(from)) / DAY);
}

/** The ISO date some days after another. */
export function dayAfter(from, days) {
  return new Date(Date.parse(from) + days * DAY).toISOString().slice(0, 10);
}

/** "15 August", or "15 Aug" in short. */
export function dayWords(iso, short = false) {
  const month = MONTHS[Number(iso.slice(5, 7)) - 1];
  return `${Number(iso.slice(8))} ${short ? month.slice(0, 3) : month}`;
}

/** "Mar". */
export function monthWord(iso) {
  return MONTHS[Number(iso.slice(5, 7)) - 1].slice(0, 3);
}

/** A number with no more digits than are known: two, or whole below a hundred. */
export function figure(value) {
  if (value === 0) {
    return '0';
  }
  const digits = Math.max(0, 1 - Math.floor(Math.log10(Math.abs(value))));
  if (digits > 0) {
    return value.toFixed(Math.min(digits, 2));
  }
  const unit = 10 ** Math.max(0, Math.floor(Math.log10(Math.abs(value))) - 1);
  return (Math.round(value / unit) * unit).toLocaleString('en-US');
}

/**
 * What an event happened to.
 * @param {Event} event
 */
export function target(event) {
  return /** @type {HTMLInputElement} */ (event.target);
}

/** The element that has the focus. */
export function focused() {
  return /** @type {HTMLElement | null} */ (document.activeElement);
}

/** What pairs said, one line for each, with what there is to add. */
export function pairList(all, add) {
  const list = element('ol', '', 'pairs-said');
  all.forEach((pair, i) => list.append(element('li', `Pair ${i + 1}: ${pair.words}${add(pair)}`)));
  return list;
}

/** Asks the engine; what it refuses becomes an error with its message. */
export async function ask(address, signal) {
  const answer = await fetch(address, { signal });
  const body = await answer.json();
  if (!answer.ok) {
    throw new Error(body.error);
  }
  return body;
}

/** Asks for a picture; what is refused becomes an error with its message. */
export async function askPicture(address, signal) {
  const answer = await fetch(address, { signal });
  const body = await answer.text();
  if (!answer.ok) {
    throw new Error(JSON.parse(body).error);
  }
  const drawn = new DOMParser().parseFromString(body, 'image/svg+xml').documentElement;
  return document.importNode(drawn, true);
}

/** What to tell people when asking went wrong; nothing when it was only overtaken. */
export function troubleWords(error) {
  if (error.name === 'AbortError') {
    return '';
  }
  return error instanceof TypeError
    ? 'The class page no longer answers. Is the program still running?'
    : error.message;
}

/** Whether people asked for less movement. */
export function calm() {
  return matchMedia('(prefers-reduced-motion: reduce)').matches;
}
