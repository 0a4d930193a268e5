"""Solves networks of distances, given as JSON on standard input, with scipy.optimize.least_squares."""
import json
import sys

import numpy
from scipy.optimize import least_squares


def solve(network):
    start = numpy.array(network["coords"]).reshape(-1, 2)
    free = numpy.array([not held for held in network["held"]])
    a = numpy.array([rule[0] for rule in network["rules"]])
    b = numpy.array([rule[1] for rule in network["rules"]])
    length = numpy.array([rule[2] for rule in network["rules"]])

    def places(x):
        at = start.copy()
        at[free] = x.reshape(-1, 2)
        return at

    def residual(x):
        at = places(x)
        return numpy.hypot(*(at[a] - at[b]).T) - length

    found = least_squares(residual, start[free].ravel(), xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=500)
    return {"coords": places(found.x).ravel().tolist(), "worst": float(numpy.max(numpy.abs(found.fun)))}


json.dump([solve(network) for network in json.load(sys.stdin)], sys.stdout)
