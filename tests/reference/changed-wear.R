# Wear whose rate changes: posterior of small estates by an independent sampler (JAGS 4.3 through rjags), kept as
# tests/domain/wear/changed-wear.fixture.json. Optional; the tests read the fixture and need neither R nor JAGS.
#
#   Rscript tests/reference/changed-wear.R tests/domain/wear/changed-wear.fixture.json [sweeps, default 400000]
#
# The model, as DEVELOPERS.md tells it (natural logarithms; K looks x_1 < … < x_K of a conveyor, h the usual interval):
#   D_k = (x_k^p − x_(k−1)^p)·x_K^(1−p)/p        g_k = m + J·[interval k lies after the change] + e_k
#   X_k = Σ exp(g_j)·D_j                          w_ik = exp(u_i + a·z_i)·X_k + n_ik
#   reading ~ N(w_ik + b_k, (f·s)²)               colour at depth d: reached with chance Φ((ln w_ik − ln d)/0.05)
# b_k ~ N(0, (0.35·s)²) for every look of a conveyor; where its rate has not changed, its last look has spread s with chance 0.12.
# n_ik is a walk; its variance grows by r_i²·ψ_u²·h an hour. r_i is the unit's crude rate: least squares through the origin of
# its thicknesses, or the middle one of all units where it is beyond a third to three times that.
# Chances of a change: 0.09 for each of the last intervals but the first (four at most), told a conveyor; where several conveyors
# carry one product also 0.09 for each of the last three intervals in common, with J_c ~ N(s, 0.15²).
# Life: given a draw, the exposure after the last look is lognormal: ln(S) ~ N(ln((depth − w)/exp(a)), v), with S the clock time
# after the last look, a = u + a·z + m + J and v = (ψ_s² + ψ_u²)·h·exp(a)/(depth − w), draws with w ≥ depth left out.
suppressMessages({ library(rjags); library(nlme) })

gauge <- 0.4
depth <- 9
expected <- list(depth = 9, exposure = 12000, spread = 0.4)

model_text <- "
model {
  lt ~ dnorm(log(0.3), 4);        tau <- exp(lt)
  lf ~ dnorm(0, 1 / 0.35^2);      f <- exp(lf)
  lpu ~ dnorm(log(0.15), 4);      psiU <- exp(lpu)
  lps ~ dnorm(log(0.03), 1/0.49); psiS <- exp(lps)
  lom ~ dnorm(log(0.15), 4);      omega <- exp(lom)
  straight ~ dbern(0.6)
  pf ~ dnorm(1.1, 16) T(0.25, 3)
  p <- ifelse(straight == 1, 1, pf)
  m0 <- log(expDepth) - (p * log(expExposure) + (1 - p) * log(xref) - log(p))
  muRaw ~ dnorm(0, 1)
  mu <- m0 + expSpread * muRaw
  label ~ dcat(labelPrior[1:nLabel])
  s ~ dnorm(0.35, 1 / 0.45^2)
  for (q in 1:nZ) { a[q] ~ dnorm(0, 1 / zSd[q]^2) }
  for (c in 1:C) {
    mRaw[c] ~ dnorm(0, 1)
    m[c] <- mu + omega * mRaw[c]
    own[c] ~ dcat(ownPrior[1:nOwn])
    jRaw[c] ~ dnorm(0, 1)
    J[c] <- ifelse(label == 1, 0.35 + 0.45 * jRaw[c], s + 0.15 * jRaw[c])
    # First interval that runs at the new rate; K + 1 for none.
    first[c] <- ifelse(label == 1, K + 2 - own[c], K + 2 - label)
    lastOff[c] ~ dbern(0.12)
    lastSd[c] <- ifelse(lastOff[c] * equals(label, 1) * equals(own[c], 1) == 1, 1, 0.35)
    X[c, 1] <- 0
    for (k in 1:K) {
      eRaw[c, k] ~ dnorm(0, 1)
      g[c, k] <- m[c] + J[c] * step(k - first[c]) + psiS * sqrt(h / dx[k]) * eRaw[c, k]
      D[c, k] <- (pow(x[k + 1], p) - pow(x[k], p)) * pow(xref, 1 - p) / p
      X[c, k + 1] <- X[c, k] + exp(g[c, k]) * D[c, k]
      b[c, k] ~ dnorm(0, 1 / (gauge * ifelse(k == K, lastSd[c], 0.35))^2)
    }
    now[c] <- m[c] + J[c] * step(K - first[c])
  }
  for (i in 1:N) {
    u[i] ~ dnorm(0, 1 / tau^2)
    az[i] <- inprod(a[], z[i, ])
    n[i, 1] <- 0
    for (k in 1:K) {
      nRaw[i, k] ~ dnorm(0, 1)
      n[i, k + 1] <- n[i, k] + crude[i] * psiU * sqrt(h * dx[k]) * nRaw[i, k]
      w[i, k] <- exp(u[i] + az[i]) * X[conv[i], k + 1] + n[i, k + 1]
    }
    la[i] <- u[i] + az[i] + now[conv[i]]
    wK[i] <- w[i, K]
  }
  for (r in 1:R) {
    y[r] ~ dnorm(w[yi[r], yk[r]] + b[conv[yi[r]], yk[r]], 1 / (f * gauge)^2)
  }
  for (r in 1:Q) {
    hit[r] ~ dbern(phi((log(max(w[qi[r], qk[r]], 1.0E-3)) - log(qd[r])) / 0.05))
  }
}"

# --- the estates -------------------------------------------------------------------------------------------------------------
# thickness: matrix of wear (mm), one row a unit, NA where none; colours: unit, look, depth, reached (0/1).
estate <- function(name, x, wear, conv = rep(1, nrow(wear)), z = NULL, colours = NULL)
  list(name = name, x = x, wear = wear, conv = conv, z = z, colours = colours)

# A: three points of one conveyor, some looks by colour only, the last interval fast.
A <- estate('A: three points, colours', c(1500, 3000, 4500, 6000), rbind(
  c(1.3, NA, 3.1, 5.9),
  c(NA, 2.9, NA, 6.6),
  c(0.7, 1.6, 2.9, NA)),
  colours = rbind(c(1, 2, 6, 0), c(2, 3, 6, 0), c(3, 4, 6, 0)))
# B: four points of one conveyor, thickness at every look, steady but for one look that reads a little thick.
B <- estate('B: four points', c(1500, 3000, 4500, 6000), rbind(
  c(0.9, 1.5, 2.9, 3.7),
  c(1.6, 2.6, 4.6, 5.8),
  c(0.7, 1.5, 2.6, 3.1),
  c(1.3, 2.1, 3.9, 5.0)))
# C: crack growth, 21 paths (Hudak, Saxena, Bucci, Malcolm 1978, in Lu and Meeker 1993; R package nlme, data set Fatigue).
# A relative length of 1.6 stands for 9 mm of wear and a million cycles for 100,000 h; looked at after 0.03 and 0.06.
crack <- function() {
  paths <- as.character(1:21)
  t(sapply(paths, function(p) {
    one <- Fatigue[as.character(Fatigue$Path) == p, ]
    sapply(c(0.03, 0.06), function(c) 15 * (one$relLength[which.min(abs(one$cycles - c))] - 1))
  }))
}
C <- estate('C: crack growth, 21 points', c(3000, 6000), unname(crack()))
# D: two conveyors of one product, three points each, both faster since the look before the last, rate rising along the trough.
D <- estate('D: two conveyors, a common change', c(1500, 3000, 4500, 6000), rbind(
  c(0.8, 1.9, 2.7, 4.6),
  c(1.1, 2.0, 3.2, 5.6),
  c(1.2, 2.7, 3.6, 6.1),
  c(1.0, 1.7, 3.0, 4.9),
  c(1.2, 2.6, 3.5, 6.3),
  c(1.7, 3.0, 4.7, 7.5)), conv = c(1, 1, 1, 2, 2, 2),
  z = matrix(c(-0.3, 0, 0.3, -0.3, 0, 0.3), ncol = 1))

prepare <- function(E) {
  K <- length(E$x); N <- nrow(E$wear); C <- max(E$conv)
  th <- which(!is.na(E$wear), arr.ind = TRUE)
  crude <- apply(E$wear, 1, function(v) sum(v * E$x, na.rm = TRUE) / sum(E$x[!is.na(v)]^2))
  mid <- median(crude, na.rm = TRUE)
  crude <- ifelse(is.finite(crude) & crude > 0.3 * mid & crude < 3 * mid, crude, mid)
  nOwn <- 1 + min(4, K - 1)
  nLabel <- if (C > 1) 1 + min(3, K - 1) else 1
  xs <- c(0, E$x)
  col <- E$colours
  data <- list(K = K, N = N, C = C, x = xs, dx = diff(xs), xref = E$x[K], h = median(diff(xs)),
    conv = E$conv, crude = crude, gauge = gauge, expDepth = expected$depth, expExposure = expected$exposure,
    expSpread = expected$spread, nOwn = nOwn, ownPrior = c(1 - 0.09 * (nOwn - 1), rep(0.09, nOwn - 1)),
    nLabel = nLabel, labelPrior = c(1 - 0.09 * (nLabel - 1), rep(0.09, nLabel - 1))[1:nLabel],
    nZ = if (is.null(E$z)) 1 else ncol(E$z), z = if (is.null(E$z)) matrix(0, N, 1) else E$z,
    zSd = if (is.null(E$z)) 1 else rep(1.2, ncol(E$z)),
    R = nrow(th), yi = th[, 1], yk = th[, 2], y = E$wear[th],
    Q = if (is.null(col)) 0 else nrow(col))
  text <- model_text
  if (is.null(col)) text <- sub('for \\(r in 1:Q\\) \\{[^}]*\\}', '', text) else {
    data$qi <- col[, 1]; data$qk <- col[, 2]; data$qd <- col[, 3]; data$hit <- col[, 4]
  }
  if (is.null(col)) data$Q <- NULL
  list(data = data, text = text)
}

levels <- c(0.05, 0.1, 0.5, 0.9, 0.95)

# Quantiles of the life of unit i from draws of one chain, exposure since fitting.
life <- function(w, la, p, psi2h, xK) {
  ok <- w < depth
  left <- depth - w[ok]; la <- la[ok]; p <- p[ok]
  sd <- sqrt(psi2h[ok] * exp(la) / left)
  chance <- function(t) mean(pnorm((log((t^p * xK^(1 - p) - xK) / p) + la - log(left)) / sd))
  sapply(levels, function(q) exp(uniroot(function(lt) chance(xK + exp(lt)) - q, c(log(0.5), log(5e6)), tol = 1e-7)$root) + xK)
}

run <- function(E, sweeps, chains = 6) {
  P <- prepare(E); d <- P$data
  set.seed(20261126)
  inits <- lapply(1:chains, function(i) list(.RNG.name = 'base::Mersenne-Twister', .RNG.seed = 1000 * i + 7))
  jm <- jags.model(textConnection(P$text), data = d, inits = inits, n.chains = chains, n.adapt = 3000, quiet = TRUE)
  update(jm, 5000, progress.bar = 'none')
  thin <- max(1, round(sweeps / 40000))
  watch <- c('wK', 'la', 'p', 'straight', 'first', 'label', 'J', 'psiU', 'psiS', 'tau', 'f', 'omega', 'b')
  s <- coda.samples(jm, watch, n.iter = sweeps, thin = thin, progress.bar = 'none')
  per <- lapply(s, as.matrix)
  N <- d$N; xK <- d$xref
  name <- function(v, i, of) if (of > 1) paste0(v, '[', i, ']') else v
  # Each statistic by chain: the mean of the chains is the number, their scatter its Monte Carlo error.
  gather <- function(fn) { v <- sapply(per, fn); v <- matrix(v, ncol = length(per))
    list(value = rowMeans(v), error = apply(v, 1, sd) / sqrt(ncol(v))) }
  units <- lapply(1:N, function(i) {
    q <- function(v) gather(function(m) quantile(m[, name(v, i, N)], levels, names = FALSE))
    lf <- gather(function(m) log(life(m[, name('wK', i, N)], m[, name('la', i, N)], m[, 'p'],
      (m[, 'psiU']^2 + m[, 'psiS']^2) * d$h, xK)))
    list(wear = q('wK'), logRate = q('la'), logLife = lf)
  })
  changes <- lapply(1:d$C, function(c) {
    g <- gather(function(m) sapply(2:(d$K + 1), function(k) mean(m[, name('first', c, d$C)] == k)))
    list(firstInterval = 2:(d$K + 1), chance = g$value, error = g$error)
  })
  whole <- function(v) gather(function(m) c(mean(m[, v]), sd(m[, v])))
  list(name = E$name, looks = E$x, wear = E$wear, conveyor = E$conv - 1, place = E$z, colours = E$colours,
    sweeps = sweeps * chains, levels = levels, units = units, changes = changes,
    straight = whole('straight'), p = whole('p'), tau = whole('tau'), f = whole('f'), psiU = whole('psiU'), psiS = whole('psiS'),
    label = if (d$nLabel > 1) gather(function(m) sapply(1:d$nLabel, function(k) mean(m[, 'label'] == k))) else NULL)
}

# JSON by hand: numbers to seven digits, matrices by row, nothing else is needed.
json <- function(v) {
  if (is.null(v)) return('null')
  if (is.list(v)) {
    if (is.null(names(v))) return(paste0('[', paste(sapply(v, json), collapse = ','), ']'))
    return(paste0('{', paste(paste0('"', names(v), '":', sapply(v, json)), collapse = ','), '}'))
  }
  if (is.character(v)) return(paste0('"', v, '"'))
  num <- function(x) ifelse(is.na(x), 'null', formatC(x, digits = 7, format = 'g', width = 1))
  if (is.matrix(v)) return(paste0('[', paste(apply(v, 1, function(r) paste0('[', paste(num(r), collapse = ','), ']')), collapse = ','), ']'))
  if (length(v) == 1) return(num(v))
  paste0('[', paste(num(v), collapse = ','), ']')
}

arguments <- commandArgs(trailingOnly = TRUE)
out <- arguments[1]
sweeps <- if (length(arguments) > 1) as.integer(arguments[2]) else 400000L
wanted <- if (length(arguments) > 2) strsplit(arguments[3], '')[[1]] else c('A', 'B', 'C', 'D')
parts <- lapply(wanted, function(k) { t <- proc.time()[3]; r <- run(get(k), sweeps)
  message(k, ': ', round(proc.time()[3] - t), ' s'); r })
writeLines(paste0('{"made by":"tests/reference/changed-wear.R, JAGS ', jags.version(), '","gauge":', gauge, ',"depth":', depth,
  ',"expectedLife":', json(expected), ',"estates":[\n', paste(sapply(parts, json), collapse = ',\n'), '\n]}'), out)
