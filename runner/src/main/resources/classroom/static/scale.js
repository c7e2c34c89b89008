// Where days and values stand in a chart.

import { dayAfter, daysBetween, monthWord } from './dom.js';

/** A round number at or above a value, and steps up to it. */
export function ticks(most, wanted = 4) {
  const rough = Math.max(most, 1e-9) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 2.5, 5, 10].map((n) => n * power).find((s) => s >= rough * 0.999);
  const marks = [];
  for (let i = 0; i <= Math.ceil(most / step - 1e-9); i += 1) {
    marks.push(i * step);
  }
  return marks.length > 1 ? marks : [0, step];
}

/** Places days and values in a box. */
export class Scale {
  constructor({ start, end, top, left, right, upper, lower }) {
    this.start = start;
    this.end = end;
    this.top = top;
    this.left = left;
    this.right = right;
    this.upper = upper;
    this.lower = lower;
    this.days = Math.max(1, daysBetween(start, end));
  }

  /** Across, of days since the start. */
  x(day) {
    return this.left + (day / this.days) * (this.right - this.left);
  }

  /** Up, of a value; what lies beyond the top stays at it. */
  y(value) {
    const share = Math.min(1, Math.max(0, value / this.top));
    return this.lower - share * (this.lower - this.upper);
  }

  /** Up, of a value that may lie beyond the top. */
  beyond(value) {
    return this.lower - (value / this.top) * (this.lower - this.upper);
  }

  /** The day, counted from the start, at a place across. */
  dayAt(x) {
    const share = (x - this.left) / (this.right - this.left);
    return Math.min(this.days, Math.max(0, Math.round(share * this.days)));
  }

  /** The value at a place up. */
  valueAt(y) {
    const share = (this.lower - y) / (this.lower - this.upper);
    return Math.min(1, Math.max(0, share)) * this.top;
  }

  /** First days of months, as days since the start, with their names. */
  months() {
    const found = [];
    for (let day = 0; day <= this.days; day += 1) {
      const iso = dayAfter(this.start, day);
      if (iso.endsWith('-01')) {
        found.push({ day, name: monthWord(iso) });
      }
    }
    return found;
  }
}

/** Shifts places that are too close together apart, keeping their order; all stay above a floor. */
export function spread(places, room, floor) {
  const order = places.map((_, i) => i).sort((a, b) => places[a] - places[b]);
  const out = places.slice();
  for (let i = 1; i < order.length; i += 1) {
    out[order[i]] = Math.max(out[order[i]], out[order[i - 1]] + room);
  }
  for (let i = order.length - 1; i >= 0; i -= 1) {
    const most = i === order.length - 1 ? floor : out[order[i + 1]] - room;
    out[order[i]] = Math.min(out[order[i]], most);
  }
  return out;
}
