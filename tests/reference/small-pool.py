# Recomputes tests/domain/wear/small-pool.fixture.json: the whole posterior of a pool of four, by brute force with numpy and scipy:
# a fine grid over (level, ln spread, ln error) and over each unit's ln rate, priors as declared. Nothing is approximated as normal.
#   python3 tests/reference/small-pool.py > tests/domain/wear/small-pool.fixture.json
import json
import numpy as np
from scipy.stats import norm

readings = [[(1500, 10.6), (3000, 9.5)], [(1600, 9.9), (3100, 8.1)], [(1400, 11.2)], [(2900, 8.8), (4400, 7.4), (6000, 5.6)]]
colours = [None, None, (4000, 6.0, 'not yet'), None]  # the third unit: at 4000 h the first 6 mm were not yet through
depth, fitted = 9.0, 12.0
mu0, mu_sd = np.log(12 / 12000), 0.7
tau0, sigma0 = np.log(0.3), np.log(0.5)

u = np.linspace(mu0 - 4.5, mu0 + 4.5, 1801)
du = u[1] - u[0]
mu = np.linspace(mu0 - 2.4, mu0 + 2.4, 97)
ln_tau = np.linspace(tau0 - 2.2, tau0 + 2.4, 47)
ln_sigma = np.linspace(sigma0 - 2.2, sigma0 + 2.0, 43)

draws = np.random.default_rng(20260101)
kept = []  # (weight table row) for drawing parameters afterwards
total = 0.0
density = [np.zeros_like(u) for _ in range(5)]  # four units and one not inspected
for ls in ln_sigma:
    sigma = np.exp(ls)
    likelihood = []
    for rows, colour in zip(readings, colours):
        log = np.zeros_like(u)
        for x, t in rows:
            log += norm.logpdf(fitted - t, np.exp(u) * x, sigma)
        if colour:
            log += norm.logcdf((np.log(colour[1] / colour[0]) - u) / 0.05)
        likelihood.append(np.exp(log))
    for lt in ln_tau:
        tau = np.exp(lt)
        prior = norm.pdf(u[None, :], mu[:, None], tau)          # level × u
        each = [prior * l[None, :] for l in likelihood]
        z = [e.sum(axis=1) * du for e in each]                   # per level
        weight = np.prod(z, axis=0) * norm.pdf(mu, mu0, mu_sd) * norm.pdf(lt, tau0, 0.5) * norm.pdf(ls, sigma0, 0.5)
        total += weight.sum()
        kept.append((ls, lt, weight))
        for i in range(4):
            density[i] += np.divide(weight, z[i], out=np.zeros_like(weight), where=z[i] > 0) @ each[i]
        density[4] += weight @ prior

levels = [0.05, 0.1, 0.5, 0.9, 0.95]
out = []
for d in density:
    cdf = np.cumsum((d[1:] + d[:-1]) / 2) * du
    cdf = np.concatenate([[0], cdf / cdf[-1]])
    # life = depth / rate: its p quantile is at the (1 − p) quantile of u
    out.append([float(depth / np.exp(np.interp(1 - p, cdf, u))) for p in levels])

# The first of the four and two not inspected, by drawing parameters from the grid and then every unit's ln rate.
share = np.array([w.sum() for _, _, w in kept])
counts = draws.multinomial(300_000, share / share.sum())
lives, unseen = [], []
for (ls, lt, weight), count in zip(kept, counts):
    if count == 0:
        continue
    levels_drawn = draws.choice(len(mu), size=count, p=weight / weight.sum())
    sigma, tau = np.exp(ls), np.exp(lt)
    units = []
    for rows, colour in zip(readings, colours):
        log = np.zeros_like(u)
        for x, t in rows:
            log += norm.logpdf(fitted - t, np.exp(u) * x, sigma)
        if colour:
            log += norm.logcdf((np.log(colour[1] / colour[0]) - u) / 0.05)
        p = np.exp(log)[None, :] * norm.pdf(u[None, :], mu[np.unique(levels_drawn), None], tau)
        cdf = np.cumsum(p, axis=1)
        cdf /= cdf[:, -1:]
        row = np.searchsorted(np.unique(levels_drawn), levels_drawn)
        q = draws.random(count)
        units.append(np.array([np.interp(qq, cdf[r], u) for qq, r in zip(q, row)]))
    for _ in range(2):
        units.append(mu[levels_drawn] + tau * draws.standard_normal(count))
    lives.append(depth / np.exp(np.max(units, axis=0)))
    unseen.append(depth / np.exp(mu[levels_drawn] + tau * draws.standard_normal((12, count)).max(axis=0)))
first, first_unseen = ([float(v) for v in np.quantile(np.concatenate(l), levels)] for l in (lives, unseen))
print(json.dumps({'source': 'tests/reference/small-pool.py, numpy ' + np.__version__, 'readings': readings, 'depth': depth, 'levels': levels, 'lives': out, 'first': first, 'firstOfTwelveNotInspected': first_unseen}, indent=1))
