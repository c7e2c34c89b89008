"""The season that every peer runs, read from the file that the project writes."""
import sys

import numpy as np


class Season:
    def __init__(self, path):
        words = open(path).read().split()
        self.rate, self.curve, self.ring, self.flow = {}, {}, {}, {}
        at = 0

        def take(count):
            nonlocal at
            at += count
            return words[at - count : at]

        def numbers(count):
            return np.array([float(w) for w in take(count)])

        while at < len(words):
            kind = take(1)[0]
            if kind == "rate":
                name, value = take(2)
                self.rate[name] = float(value)
            elif kind == "daily":
                self.days = int(take(1)[0])
                self.daily = numbers(4 * self.days).reshape(-1, 4)
            elif kind == "members":
                self.members = numbers(3 * int(take(1)[0])).reshape(-1, 3)
            elif kind == "states":
                width = sum(map(len, self.ring.values()))
                self.states = numbers(width * int(take(1)[0])).reshape(-1, width)
            elif kind == "expected":
                self.expected = numbers(2 * int(take(1)[0])).reshape(-1, 2)
            elif kind == "curve":
                name, count = take(2)
                self.curve[name] = numbers(2 * int(count)).reshape(-1, 2)
            elif kind == "flow":
                stages, count = take(2)
                self.flow[int(stages)] = numbers(int(count)).reshape(-1, 2)
            else:
                name, count = take(2)
                self.ring[name] = numbers(int(count))


def agree(error, limit):
    """A peer that makes something else of the season is not timed."""
    if not error <= limit:
        print(f"differs from the project by {error:.2g}, more than {limit:.0e}", file=sys.stderr)
        sys.exit(3)
