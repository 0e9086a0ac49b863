"""
The heater's equations once more, for scipy's LSODA with a banded Jacobian. Reads the problem as JSON, tries ways and tolerances, prints the
fastest that is as near to the exact faces as ours, then the processor time of one more solution for each line read.
"""
import json, sys, time
from math import exp
import numpy as np
from scipy.integrate import odeint, solve_ivp

P = json.load(open(sys.argv[1]))
E = P["exchange"]
S, K = 5.670374419e-8, 273.15
C, G, loss = (np.array(P[k]) for k in ("capacity", "link", "loss"))
s1, f1, s2, f2, air, fab = P["ports"]
A1, A2 = P["outer"]
out = P["outside"]
n = len(C)
# the order that makes the matrix banded: fire wall outwards, air, fabric, passage wall inwards
order = np.r_[np.arange(0, f1 + 1), air, fab, np.arange(f2, f1, -1)]
back = np.argsort(order)
minute = np.arange(len(P["released"])) * 60.0
end = minute[-1]
middle = (minute[1:] + minute[:-1]) / 2
power = np.diff(P["released"]) / 60
gas = np.diff(P["gas"]) / 60
CC = .387 / (1 + (.492 / .706) ** (9 / 16)) ** (8 / 27)

def hc(a, b):
    film = (a + b) / 2
    nu = (13.3 + .0936 * film) * 1e-6
    ra = 9.80665 * abs(a - b) * E["face_height_m"] ** 3 * .706 / ((film + K) * nu * nu)
    r = .825 + CC * ra ** (1 / 6)
    return r * r * (.0243 + .000072 * film) / E["face_height_m"]

def hr(a, b):
    a, b = a + K, b + K
    return E["face_emissivity"] * S * (a * a + b * b) * (a + b)

H = lambda t: (1040 + .127 * t) * t
guess = [600.0, 400.0]

def exchange(t, T):
    # scalars as Python's own: numpy's cost several times as much
    t1, t2, ta, tf = float(T[s1]), float(T[s2]), float(T[air]), float(T[fab])
    burning = t < end
    Q = float(np.interp(t, middle, power)) if burning else 0.0
    m = 0.0
    if burning:
        a = P["flame_air"] if t < P["flame_out_h"] * 3600 else P["ember_air"]
        m = P["cold"] * a + float(np.interp(t, middle, gas))
    e = E["flame_emissivity"] * Q / (Q + .15 * P["peak"])
    k1 = (t1 + K) ** 4
    kf = (tf + K) ** 4
    hot = ((-1040 + (1040 ** 2 + 4 * .127 * (H(out) + Q / m)) ** .5) / .254 + K) if m > 0 else t1 + K
    flow = m / P["full"]
    wash = E["glass_wash_W_per_m2K"] * min(1, flow)
    g, x = guess
    h1 = (E["firebox_still_W_per_m2K"] + E["firebox_forced_W_per_m2K"] * flow) * P["firebox"]
    rad = S * e * P["firebox"]
    for _ in range(8):
        f4 = hot * hot * g * g
        seen = S * E["glass_emissivity"] * ((1 - e) * k1 + e * (1 - E["glass_transmission"]) * f4)
        third = 4 * S * E["glass_emissivity"] * x ** 3
        dx = (seen + S * E["glass_emissivity"] * (kf - 2 * x ** 4) - E["glass_outside_W_per_m2K"] * (x - K - ta) - wash * (x - K - out)) / (2 * third + E["glass_outside_W_per_m2K"] + wash)
        x += dx
        d_air = P["door"] * E["glass_outside_W_per_m2K"] * (x - K - ta)
        d_fab = P["door"] * (S * E["glass_transmission"] * e * f4 + S * E["glass_emissivity"] * (x ** 4 - kf))
        door = d_air + d_fab
        flame = door * e * f4 / (e * f4 + (1 - e) * k1)
        dg = 0.0
        if m > 0:
            c = g - K
            dg = (Q + m * H(out) - flame + rad * k1 + h1 * t1 - m * H(c) - rad * f4 - h1 * c) / (m * (1040 + .254 * c) + 2 * rad * hot * hot * g + h1)
            g += dg
        if abs(dx) + abs(dg) < 1e-6:
            break
    guess[:] = g, x
    if m == 0:
        return -door, 0.0, d_air, d_fab
    c = g - K
    q1 = rad * (hot * hot * g * g - k1) + h1 * (c - t1) - (door - flame)
    h2 = E["passage_still_W_per_m2K"] + E["passage_forced_W_per_m2K"] * flow ** .8 + E["passage_gas_radiation_W_per_m2K"] * Q / (Q + .15 * P["peak"])
    leaving = t2 + (c - t2) * exp(-h2 * P["passage"] / (m * 1090))
    return q1, m * (H(c) - H(leaving)), d_air, d_fab

def rhs(t, y):
    T = y[back]
    q = G * (T[1:] - T[:-1])
    d = -loss * (T - out)
    d[:-1] += q
    d[1:] -= q
    q1, q2, d_air, d_fab = exchange(t, T)
    ta, tf = float(T[air]), float(T[fab])
    for face, area in ((f1, A1), (f2, A2)):
        outer = float(T[face])
        c = area * hc(outer, ta) * (outer - ta)
        r = area * hr(outer, tf) * (outer - tf)
        d[face] -= c + r
        d[air] += c
        d[fab] += r
    d[s1] += q1
    d[s2] += q2
    d[air] += d_air
    d[fab] += d_fab
    return (d / C)[order]

exact = np.array(P["exact"])
quarters = np.arange(1, 193) * 900.0
start = np.full(n, 20.0)
# stop where the air changes and where the flue is shut, so that no jump is stepped over
stretches = ((0.0, P["flame_out_h"] * 3600), (P["flame_out_h"] * 3600, end), (end, 172800.0))

def by_solve_ivp(a, b, at, T, rtol, atol):
    return solve_ivp(rhs, (a, b), T, method="LSODA", rtol=rtol, atol=atol, lband=2, uband=2, t_eval=at).y.T

def by_odeint(a, b, at, T, rtol, atol):
    return odeint(rhs, T, np.r_[a, at], tfirst=True, rtol=rtol, atol=atol, ml=2, mu=2, mxstep=100000)[1:]

WAYS = {"solve_ivp": by_solve_ivp, "odeint": by_odeint}

def solve(way, rtol, atol):
    guess[:] = 600.0, 400.0
    began = time.process_time()
    T, faces = start, []
    for a, b in stretches:
        at = quarters[(quarters > a) & (quarters <= b)]
        asked = len(at)
        if asked == 0 or at[-1] < b:
            at = np.r_[at, b]
        ys = WAYS[way](a, b, at, T, rtol, atol)
        T = ys[-1]
        faces += [(A1 * y[back][f1] + A2 * y[back][f2]) / (A1 + A2) for y in ys[:asked]]
    return 1000 * (time.process_time() - began), float(np.abs(np.array(faces) - exact[1:]).max())

best = None
for way in WAYS:
    for factor in (1, 10, 100):
        for rtol in (3e-3, 2e-3, 1e-3, 7e-4, 5e-4, 3e-4, 2.2e-4, 1.6e-4, 1.3e-4, 1e-4, 7e-5, 4e-5, 1e-5, 1e-6, 1e-7):
            tries = [solve(way, rtol, rtol * factor) for _ in range(3)]
            ms, error = min(tries)
            if error <= P["ours_K"]:
                if best is None or ms < best[0]:
                    best = (ms, error, way, rtol, rtol * factor)
                break

if best is None:
    sys.exit("no tolerance reaches the error asked for")
_, error, way, rtol, atol = best
print(json.dumps({"settings": f"{way}, rtol {rtol:g}, atol {atol:g} K", "error_K": error}), flush=True)
for _ in sys.stdin:
    print(json.dumps(solve(way, rtol, atol)[0]), flush=True)
