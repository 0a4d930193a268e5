"""
Errors of making by another way: numpy's random numbers, circles crossed by scipy.optimize.fsolve, the play of an arbor
by linear programming (scipy.optimize.linprog). Prints what `errorsTried.test.ts` holds our trials against.

Run once by hand; the values stand in `errorsTriedValues.json`. Errors are normal, a plus-minus two standard deviations.
Lengths of errorsTried.json are repeated here, so that nothing of the program takes part. An involute pair without
profile shift has no play at m(N + n)/2 and none left nearer (ISO 53, ISO 21771): the end of its window.
"""
import json
import numpy as np
from scipy.optimize import fsolve, linprog

TRIALS = 4000
LENGTHS, HOLES, BORES, TIPS = 0.04, 0.03, 0.012, 0.03
rng = np.random.default_rng(7)
normal = lambda plus_minus: plus_minus / 2 * rng.standard_normal()


def crossing(a, ra, b, rb, start):
    near = lambda p: [np.hypot(p[0] - a[0], p[1] - a[1]) - ra, np.hypot(p[0] - b[0], p[1] - b[1]) - rb]
    return np.array(fsolve(near, start, xtol=1e-13))


def play(bounds, z):
    """Farthest that a stick x0 + s z can stand aside at z, with |x0 + s zi| <= ci."""
    rows = [[sign, sign * zi] for zi, _ in bounds for sign in (1, -1)]
    limits = [ci for _, ci in bounds for _ in (1, -1)]
    found = linprog([-1, -z], A_ub=rows, b_ub=limits, bounds=[(None, None)] * 2, method="highs")
    return -found.fun


def bearings(lower, upper):
    """Bounds of two bearings 3 long at the plates' lower faces, 0 and 37; play in diameter."""
    return [(z, max(0, c) / 2) for c, zs in ((lower, (0, 3)), (upper, (37, 40))) for z in zs]


def at_wheel(bounds, level):
    return max(play(bounds, level), play(bounds, level + 2))


def polar(centre, r, degrees):
    return centre + r * np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])


def trial(err, hole, bore, tip):
    day = np.array([err("p", 0.02), err("p", 0.02)])
    plate = np.array([0.0, 20.0])
    moon = polar(day, 70 + err("l", LENGTHS), 90 + np.degrees(err("l", LENGTHS) / 70))
    tide = polar(day, 38.4 + 0.02 + err("l", 0.03), -100 + err("l", 0.05))
    lower = polar(day, 27.3 + 0.02 + err("l", 0.03), 15 + err("l", 0.1))
    upper = crossing(lower, 35.6 + 0.02 + err("l", LENGTHS), moon, 40.95 + 0.02 + err("l", LENGTHS), [30.3, 42.5])
    # The post: 29.2 is the tip radius of 71 teeth of module 0.8, 4 that of the post.
    p1 = crossing(plate, 70 + err("l", 0.05), upper, 29.2 + 4 + 0.55 + err("l", 0.05), [63.95, 48.47])
    h = {}
    for name, at in (("day", day), ("tide", tide), ("moon", moon), ("lower", lower), ("upper", upper), ("p1", p1)):
        h[name] = at + np.array([hole(), hole()])
    apart = lambda a, b: float(np.hypot(*(h[a] - h[b])))
    b = {name: bearings(c[0] + bore(), c[1] + bore()) for name, c in PLAYS.items()}
    pipe = max(0, 0.02 + bore()) / 2
    day_at = lambda level: at_wheel(b["day"], level)
    d = {
        "day-tide": apart("day", "tide"),
        "tide-lunar": apart("day", "tide"),
        "day-lower": apart("day", "lower"),
        "lower-upper": apart("lower", "upper"),
        "upper-moon": apart("upper", "moon"),
    }
    room = {
        "day-tide": d["day-tide"] - 38.4 + day_at(9) + at_wheel(b["tide"], 9),
        "tide-lunar": d["tide-lunar"] - 38.4 + at_wheel(b["tide"], 25) + pipe + day_at(25),
        "day-lower": d["day-lower"] - 27.3 + day_at(13) + at_wheel(b["lower"], 13),
        "lower-upper": d["lower-upper"] - 35.6 + at_wheel(b["lower"], 17) + at_wheel(b["upper"], 17),
        "upper-moon": d["upper-moon"] - 40.95 + at_wheel(b["upper"], 21) + at_wheel(b["moon"], 21),
    }
    gap = apart("upper", "p1") - 29.2 - tip() / 2 - 4 - at_wheel(b["upper"], 17)
    return d, room, gap, upper


PLAYS = {"day": (0.02, 0.02), "tide": (0.02, 0.02), "moon": (0.02, 0.02), "lower": (0.02, 0.02), "upper": (0.03, 0.02)}
nothing = lambda *_: 0.0
planned = trial(nothing, nothing, nothing, nothing)
runs = [trial(lambda _, s: normal(s), lambda: normal(HOLES), lambda: normal(BORES), lambda: normal(TIPS)) for _ in range(TRIALS)]
depths = {}
for name in planned[0]:
    d = np.array([run[0][name] for run in runs])
    room = np.array([run[1][name] for run in runs])
    depths[name] = {
        "planned": planned[0][name],
        "room": planned[1][name],
        "sigma": float(d.std()),
        # A thousandth of a millimetre nearer than the end is the fineness that is told.
        "tight": float((room < -1e-3).mean()),
        "bare": float((np.array([run[0][name] for run in runs]) < planned[0][name] - 0.02 - 1e-3).mean()),
    }
gap = np.array([run[2] for run in runs])
marks = np.array([run[3] for run in runs])
print(json.dumps({
    "source": "errorsTried.py: numpy %s, scipy fsolve and linprog" % np.__version__,
    "trials": TRIALS,
    "depths": depths,
    "gap": {"planned": planned[2], "sigma": float(gap.std()), "tooClose": float((gap < 0.5).mean())},
    "upperMark": {"at": planned[3].tolist(), "covariance": np.cov(marks.T).ravel().tolist()},
}, indent=2))
