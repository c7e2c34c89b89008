// A chart over days: lines named at their ends, spans, marks, and a day that is read.

import { dayWords, daysBetween, dayAfter, draw, figure } from './dom.js';
import { Scale, spread, ticks } from './scale.js';

const NARROW = 34; // rem: below this the names stand above the chart

export class Chart {
  /**
   * host: element to draw in. height: in rem. spanNames: whether spans are named here. letters:
   * letters to leave room for at the ends of lines, so that charts below one another agree.
   */
  constructor(host, { height = 10, spanNames = false, letters = 0 } = {}) {
    this.host = host;
    this.height = height;
    this.spanNames = spanNames;
    this.letters = letters;
    this.onDay = null;
    new ResizeObserver(() => this.redraw()).observe(host);
    window.addEventListener('resize', () => this.redraw());
    host.addEventListener('pointermove', (e) => this.point(e));
    host.addEventListener('pointerdown', (e) => this.point(e));
  }

  /**
   * picture: {start, end, lines: [{name, start, values, kind, kept}], spans, marks, top,
   * label}; lines have one value per day.
   */
  show(picture) {
    this.picture = picture;
    this.redraw();
  }

  /** The day to read, counted from the start; null for none. */
  read(day) {
    this.day = day;
    this.redraw();
  }

  point(event) {
    if (this.scale && this.onDay && (event.pointerType === 'mouse' || event.buttons)) {
      this.onDay(this.scale.dayAt(event.clientX - this.host.getBoundingClientRect().left));
    }
  }

  redraw() {
    if (!this.picture || this.host.clientWidth === 0) {
      return;
    }
    const rem = parseFloat(getComputedStyle(document.documentElement).fontSize);
    const width = this.host.clientWidth;
    const narrow = width < NARROW * rem;
    const keys = narrow ? keyRows(this.picture, width, rem) : [];
    const upper = (1.4 * keys.length + ((this.picture.marks ?? []).length > 0 ? 1.3 : 0.4)) * rem;
    const height = this.height * rem * (narrow ? 0.7 : 1) + upper;
    const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
    svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    svg.setAttribute('height', String(height));
    svg.setAttribute('role', 'img');
    svg.setAttribute('aria-label', words(this.picture));
    const { start, end } = this.picture;
    const steps = ticks(this.picture.top ?? top(this.picture), narrow ? 3 : 4);
    this.scale = new Scale({
      start,
      end,
      top: steps[steps.length - 1],
      left: 3.4 * rem,
      right: width - (narrow ? 0.7 : nameRoom(this)) * rem,
      upper,
      lower: height - 1.5 * rem,
    });
    this.rem = rem;
    this.narrow = narrow;
    this.keys = keys;
    spans(this, svg);
    axes(this, svg, steps);
    this.picture.lines.forEach((line) => curve(this, svg, line));
    marks(this, svg);
    names(this, svg);
    cursor(this, svg);
    this.host.replaceChildren(svg);
  }
}

/** Room for the names at the ends of the lines, rem. */
function nameRoom({ picture, letters }) {
  const longest = Math.max(letters, ...picture.lines.map((line) => line.name.length));
  return longest > 0 ? 1.2 + 0.53 * longest : 0.7;
}

/** The names of several lines in rows above a narrow chart. */
function keyRows({ lines }, width, rem) {
  const named = lines.filter((line) => !line.kept && line.name);
  const found = [];
  let x = Infinity;
  (named.length > 1 ? named : []).forEach((line) => {
    const room = (2.9 + line.name.length * 0.56) * rem;
    if (x + room > width + rem) {
      x = 3.4 * rem;
      found.push([]);
    }
    found[found.length - 1].push({ line, x });
    x += room;
  });
  return found;
}

function top(picture) {
  const highs = picture.lines.map((line) => line.values.reduce((a, b) => Math.max(a, b), 0));
  return Math.max(...highs, 1e-3);
}

/** What a line says, for those who cannot see it. */
function words(picture) {
  const parts = picture.lines.map((line) => {
    if (line.values.length === 0) {
      return `${line.name || 'The line'}: nothing to show.`;
    }
    let peak = 0;
    line.values.forEach((v, i) => {
      peak = v > line.values[peak] ? i : peak;
    });
    const last = line.values.length - 1;
    const on = (i) => dayWords(dayAfter(line.start, i));
    const who = [line.name, line.kept ? 'kept' : ''].filter(Boolean).join(', ');
    return `${who ? `${who}: ` : ''}${figure(line.values[0])} on ${on(0)}, most `
      + `${figure(line.values[peak])} on ${on(peak)}, ${figure(line.values[last])} on ${on(last)}.`;
  });
  return `${picture.label}. ${parts.join(' ')}`;
}

function spans({ scale, rem, picture, spanNames }, svg) {
  (picture.spans ?? []).forEach((span) => {
    const x = scale.x(Math.max(0, daysBetween(picture.start, span.from)));
    const width = scale.x(daysBetween(picture.start, span.to)) - x;
    const kind = span.label.startsWith('honey') ? 0 : 1;
    draw(svg, 'rect',
      { x, y: scale.upper, width, height: scale.lower - scale.upper, class: `span-${kind}` });
    if (spanNames) {
      rows(span.label, width - 6, rem).forEach((row, i) => {
        draw(svg, 'text', { x: x + 4, y: scale.upper + (0.95 + i) * rem }, row);
      });
    }
  });
}

/** Words in rows of a width; none when one word alone is wider. */
function rows(label, width, rem) {
  const wide = (text) => text.length * 0.42 * rem > width;
  const out = [];
  label.split(' ').forEach((word) => {
    const last = out.length - 1;
    if (last >= 0 && !wide(`${out[last]} ${word}`)) {
      out[last] += ` ${word}`;
    } else {
      out.push(word);
    }
  });
  return out.some(wide) ? [] : out;
}

function axes({ scale, rem }, svg, steps) {
  steps.forEach((step) => {
    const y = scale.y(step);
    draw(svg, 'line',
      { x1: scale.left, x2: scale.right, y1: y, y2: y, class: step === 0 ? 'foot-line' : 'rule' });
    draw(svg, 'text', { x: scale.left - 0.4 * rem, y: y + 0.28 * rem, 'text-anchor': 'end' },
      step.toLocaleString('en-US'));
  });
  const months = scale.months();
  const room = (scale.right - scale.left) / Math.max(1, months.length);
  const every = room > 2.1 * rem ? 1 : room > 1.05 * rem ? 2 : 3;
  months.forEach(({ day, name }, i) => {
    const x = scale.x(day);
    draw(svg, 'line', { x1: x, x2: x, y1: scale.lower, y2: scale.lower + 4, class: 'foot-line' });
    if (i % every === 0 && x < scale.right - 1.5 * rem) {
      draw(svg, 'text', { x: x + 2, y: scale.lower + 1.1 * rem }, name);
    }
  });
}

function curve({ scale, picture }, svg, line) {
  const shift = daysBetween(picture.start, line.start);
  const path = line.values
    .map((v, i) => `${i ? 'L' : 'M'}${scale.x(i + shift).toFixed(1)} ${scale.beyond(v).toFixed(1)}`)
    .join('');
  if (path) {
    draw(inside(scale, svg), 'path',
      { d: path, class: `curve kind-${line.kind}${line.kept ? ' kept' : ''}` });
  }
}

/** A picture within the picture, which cuts off what rises above the chart. */
function inside({ left, right, upper, lower }, svg) {
  const [x, y, width, height] = [left - 3, upper, right - left + 6, lower - upper + 3];
  return draw(svg, 'svg',
    { x, y, width, height, viewBox: `${x} ${y} ${width} ${height}`, overflow: 'hidden' });
}

function marks({ scale, rem, picture, narrow }, svg) {
  let free = -Infinity;
  [...(picture.marks ?? [])]
    .sort((a, b) => a.on.localeCompare(b.on))
    .forEach((mark) => {
      const x = scale.x(daysBetween(picture.start, mark.on));
      draw(svg, 'line',
        { x1: x, x2: x, y1: scale.upper - 4, y2: scale.lower, class: 'mark-line' });
      const width = mark.label.length * 0.44 * rem;
      const left = Math.min(x, scale.right - (narrow ? width : 0));
      const clear = left > free; // else it stands a row lower
      draw(svg, 'text',
        { x: left + (clear ? 0 : 3), y: scale.upper + (clear ? -0.45 : 0.9) * rem,
          class: 'mark-name' },
        mark.label);
      free = clear ? left + width : free;
    });
}

/** Names at the ends of the lines, or above a narrow chart. */
function names(chart, svg) {
  const { scale, rem, picture, narrow } = chart;
  const named = picture.lines.filter((line) => line.values.length > 0);
  const live = named.filter((line) => !line.kept);
  const ending = live.find((line) => daysBetween(picture.start, line.start) + line.values.length
    <= daysBetween(picture.start, picture.end));
  if (ending) {
    lostMark(chart, svg, ending);
  }
  if (narrow) {
    key(chart, svg);
    return;
  }
  const ends = named.map((line) => scale.y(line.values[line.values.length - 1]) + 0.3 * rem);
  const places = spread(ends, 1.15 * rem, scale.lower);
  named.forEach((line, i) => {
    draw(svg, 'text',
      {
        x: scale.right + 0.5 * rem,
        y: places[i],
        class: `name kind-${line.kind}${line.kept ? ' kept' : ''}`,
      }, line.kept ? line.letter ?? 'kept' : line.name);
  });
}

/**
 * Where a colony is lost or no more is shown, the lines stop; this says so, beside the end and at
 * the lowest height at which the words lie on no curve.
 */
function lostMark(chart, svg, line) {
  const { scale, rem, picture } = chart;
  const last = scale.x(daysBetween(picture.start, line.start) + line.values.length - 1);
  const words = line.beyond === 'not shown' ? ['not', 'shown'] : ['colony', 'lost'];
  const places = [];
  for (const lines of [[words.join(' ')], words]) {
    const width = 0.48 * rem * Math.max(...lines.map((row) => row.length));
    const height = (0.2 + lines.length) * rem;
    for (const x of [last + 0.4 * rem, last - 0.4 * rem - width]) {
      const fits = x >= scale.left && x + width <= scale.right;
      for (let y = scale.lower - 0.3 * rem; fits && y - height > scale.upper; y -= 0.3 * rem) {
        places.push({ lines, x, y, width, height });
      }
    }
  }
  const covers = places.map((place) => covered(chart, place));
  const place = places[covers.indexOf(Math.min(...covers))];
  (place?.lines ?? []).forEach((row, i) => {
    const y = place.y - (0.2 + place.lines.length - 1 - i) * rem;
    draw(svg, 'text', { x: place.x, y, class: 'end' }, row);
  });
}

/** How many days of the curves lie in a box, or pass through it on their way to the next day. */
function covered({ scale, rem, picture }, { x, y, width, height }) {
  const room = 0.25 * rem;
  let days = 0;
  picture.lines.forEach((line) => {
    const shift = daysBetween(picture.start, line.start);
    line.values.forEach((v, i) => {
      const at = scale.x(i + shift);
      if (at >= x - room && at <= x + width + room) {
        const ends = [scale.beyond(v), scale.beyond(line.values[i + 1] ?? v)];
        days += Math.max(...ends) >= y - height - room && Math.min(...ends) <= y + room ? 1 : 0;
      }
    });
  });
  return days;
}

/** The names above a narrow chart. */
function key({ rem, keys }, svg) {
  keys.forEach((row, i) => row.forEach(({ line, x }) => {
    const y = (0.6 + 1.4 * i) * rem;
    draw(svg, 'path', { d: `M${x} ${y}h${1.6 * rem}`, class: `curve kind-${line.kind}` });
    draw(svg, 'text', { x: x + 2 * rem, y: y + 0.3 * rem, class: `name kind-${line.kind}` },
      line.name);
  }));
}

function cursor({ scale, day, picture }, svg) {
  if (day === null || day === undefined) {
    return;
  }
  const x = scale.x(day);
  draw(svg, 'line', { x1: x, x2: x, y1: scale.upper, y2: scale.lower, class: 'cursor' });
  picture.lines.filter((line) => !line.kept).forEach((line) => {
    const value = line.values[day - daysBetween(picture.start, line.start)];
    if (value !== undefined) {
      draw(svg, 'circle', { cx: x, cy: scale.y(value), r: 5, class: `dot kind-${line.kind}` });
    }
  });
}
