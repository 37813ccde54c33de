# Recomputes tests/domain/wear/mixed-wear.fixture.json: an independent likelihood of the wear model in R, by adaptive quadrature
# (stats::integrate) over each unit's ln rate and Newton on central differences. Run from the project's top folder:
#   Rscript tests/reference/mixed-wear.R > tests/domain/wear/mixed-wear.fixture.json
# Needs R with the survival package. The data are drawn here, with R's own generator and the seeds below.
options(digits = 17)
suppressPackageStartupMessages(library(survival))

log_area_between <- function(lo, hi) { # ln(pnorm(hi) - pnorm(lo))
  flip <- lo > 0
  a <- ifelse(flip, -hi, lo); b <- ifelse(flip, -lo, hi)
  lb <- pnorm(b, log.p = TRUE); la <- pnorm(a, log.p = TRUE)
  ifelse(la == -Inf, lb, lb + log1p(-exp(pmin(la - lb, 0))))
}

# One unit: x, y thickness rows; lo, hi edges of ln rate (vectors), soft their softness; life ln rate or NA.
log_integrand <- function(u, d, mu, tau, sigma) {
  out <- dnorm(u, mu, tau, log = TRUE)
  for (j in seq_along(d$x)) out <- out + dnorm(d$y[j], exp(u) * d$x[j], sigma, log = TRUE)
  for (j in seq_along(d$lo)) out <- out + log_area_between((u - d$hi[j]) / d$soft[j], (u - d$lo[j]) / d$soft[j])
  out
}
ends <- function(d, mu, tau, sigma) {
  grid <- seq(mu - 12 * tau, mu + 12 * tau, length.out = 4001)
  for (pass in 1:2) {
    v <- log_integrand(grid, d, mu, tau, sigma)
    keep <- which(v > max(v) - 40)
    grid <- seq(grid[max(1, min(keep) - 1)], grid[min(length(grid), max(keep) + 1)], length.out = 4001)
  }
  list(from = grid[1], to = grid[length(grid)], top = max(v))
}
area <- function(d, mu, tau, sigma, e, from, to) {
  if (to <= from) return(0)
  cuts <- seq(from, to, length.out = 13)
  sum(sapply(1:12, function(k) integrate(function(u) exp(log_integrand(u, d, mu, tau, sigma) - e$top), cuts[k], cuts[k + 1], rel.tol = 1e-12, abs.tol = 0, subdivisions = 500, stop.on.error = FALSE)$value))
}
log_likelihood <- function(p, units) {
  mu <- p[1]; tau <- exp(p[2]); sigma <- exp(p[3])
  sum(sapply(units, function(d) {
    if (!is.na(d$life)) return(dnorm(d$life, mu, tau, log = TRUE))
    e <- ends(d, mu, tau, sigma)
    log(area(d, mu, tau, sigma, e, e$from, e$to)) + e$top
  }))
}
newton <- function(f, p, free) {
  h <- 1e-4
  for (iteration in 1:12) {
    k <- length(free); g <- numeric(k); H <- matrix(0, k, k); f0 <- f(p)
    at <- function(i, a, j = 0, b = 0) { q <- p; q[free[i]] <- q[free[i]] + a; if (j > 0) q[free[j]] <- q[free[j]] + b; f(q) }
    up <- sapply(1:k, function(i) at(i, h)); down <- sapply(1:k, function(i) at(i, -h))
    g <- (up - down) / (2 * h)
    for (i in 1:k) H[i, i] <- (up[i] - 2 * f0 + down[i]) / h^2
    if (k > 1) for (i in 2:k) for (j in 1:(i - 1)) {
      H[i, j] <- H[j, i] <- (at(i, h, j, h) - at(i, h, j, -h) - at(i, -h, j, h) + at(i, -h, j, -h)) / (4 * h^2)
    }
    step <- solve(H, g)
    p[free] <- p[free] - step
    if (max(abs(step)) < 1e-9) break
  }
  p
}
life_quantile <- function(p, d, par, depth) {
  mu <- par[1]; tau <- exp(par[2]); sigma <- exp(par[3]); e <- ends(d, mu, tau, sigma)
  all <- area(d, mu, tau, sigma, e, e$from, e$to)
  # life = depth / e^u, so life <= t is u >= ln(depth / t)
  u <- uniroot(function(c) area(d, mu, tau, sigma, e, c, e$to) / all - p, c(e$from, e$to), tol = 1e-12)$root
  depth / exp(u)
}

draw <- function(seed, n, with_thickness, with_colour, with_lives) {
  set.seed(seed)
  depths <- c(6, 12); soft <- 0.05
  rows <- list(); lives <- list(); units <- list()
  for (i in 1:n) {
    u <- rnorm(1, log(1.1e-3), 0.35)
    d <- list(x = numeric(0), y = numeric(0), lo = numeric(0), hi = numeric(0), soft = numeric(0), life = NA)
    reached <- c(Inf, Inf); not_yet <- c(0, 0)
    if (with_lives && i %% 7 == 0) {
      if (i %% 2 == 0) { t <- round(9 / exp(u)); d$life <- log(9 / t); lives[[length(lives) + 1]] <- c(i - 1, t, 9, 1) }
      else { t <- round(0.7 * 9 / exp(u)); d$lo <- -Inf; d$hi <- log(9 / t); d$soft <- soft; lives[[length(lives) + 1]] <- c(i - 1, t, 9, 0) }
    } else {
      for (x in round(sort(runif(sample(1:5, 1), 500, 9000)))) {
        colour <- with_colour && (!with_thickness || runif(1) < 0.4)
        w <- exp(u) * x
        if (colour) {
          layer <- sum(w >= depths * exp(rnorm(1, 0, 0.02)))
          rows[[length(rows) + 1]] <- c(i - 1, x, if (layer == 2) 2 else 1, layer)
          if (layer > 0) reached[layer] <- min(reached[layer], x)
          if (layer < 2) not_yet[layer + 1] <- max(not_yet[layer + 1], x)
        } else {
          t <- round(12 - w + rnorm(1, 0, 0.4), 1)
          if (t < 0) next
          rows[[length(rows) + 1]] <- c(i - 1, x, 0, t)
          d$x <- c(d$x, x); d$y <- c(d$y, 12 - t)
        }
      }
      for (k in 1:2) {
        if (reached[k] < not_yet[k]) stop("contradictory draw: choose another seed")
        if (reached[k] == Inf && not_yet[k] == 0) next
        d$lo <- c(d$lo, log(depths[k] / reached[k])); d$hi <- c(d$hi, log(depths[k] / not_yet[k])); d$soft <- c(d$soft, soft)
      }
      if (reached[2] < not_yet[1]) stop("contradictory draw: choose another seed")
    }
    units[[i]] <- d
  }
  list(units = units, rows = do.call(rbind, rows), lives = if (length(lives)) do.call(rbind, lives) else NULL)
}

json_rows <- function(m) if (is.null(m)) "[]" else paste0("[", paste(apply(m, 1, function(r) paste0("[", paste(format(r, digits = 15, trim = TRUE), collapse = ","), "]")), collapse = ","), "]")
num <- function(v) paste(format(v, digits = 17, trim = TRUE), collapse = ", ")

cases <- list(
  list(name = "thicknesses only", seed = 11, n = 24, thickness = TRUE, colour = FALSE, lives = FALSE),
  list(name = "thicknesses, colours and former lives", seed = 21, n = 40, thickness = TRUE, colour = TRUE, lives = TRUE),
  list(name = "colours only", seed = 31, n = 60, thickness = FALSE, colour = TRUE, lives = FALSE)
)
cat("{\n  \"source\": \"tests/reference/mixed-wear.R,", R.version.string, "\",\n  \"cases\": [\n")
for (k in seq_along(cases)) {
  case <- cases[[k]]
  data <- draw(case$seed, case$n, case$thickness, case$colour, case$lives)
  free <- if (case$thickness) 1:3 else 1:2
  f <- function(p) log_likelihood(p, data$units)
  start <- c(log(1.1e-3), log(0.3), log(0.4))
  rough <- optim(start[free], function(q) { p <- start; p[free] <- q; -f(p) }, control = list(reltol = 1e-9, maxit = 400))
  p <- start; p[free] <- rough$par
  p <- newton(f, p, free)
  shown <- c(2, 4, 9)
  quantiles <- sapply(shown, function(i) sapply(c(0.05, 0.1, 0.5, 0.9, 0.95), life_quantile, d = data$units[[i]], par = p, depth = 9))
  cat("    {\n      \"name\": \"", case$name, "\",\n      \"units\": ", case$n, ",\n", sep = "")
  cat("      \"readings\": ", json_rows(data$rows), ",\n      \"lives\": ", json_rows(data$lives), ",\n", sep = "")
  cat("      \"level\": ", num(p[1]), ", \"spread\": ", num(exp(p[2])), ", \"error\": ", if (case$thickness) num(exp(p[3])) else "null", ", \"logLikelihood\": ", num(f(p)), ",\n", sep = "")
  cat("      \"lifeTo9\": [", paste(sapply(seq_along(shown), function(j) paste0("{\"unit\": ", shown[j] - 1, ", \"quantiles\": [", num(quantiles[, j]), "]}")), collapse = ", "), "]\n", sep = "")
  cat("    }", if (k < length(cases)) "," else "", "\n", sep = "")
}
cat("  ],\n")

# One layer depth, colours only: exactly a lognormal interval-censored regression; survreg's scale is sqrt(spread^2 + soft^2).
set.seed(41)
n <- 80
u <- rnorm(n, log(1.2e-3), 0.4)
rows <- list(); left <- right <- numeric(n)
for (i in 1:n) {
  xs <- sort(sample(seq(1000, 12000, 500), sample(1:4, 1)))
  hit <- exp(u[i]) * xs >= 6
  for (j in seq_along(xs)) rows[[length(rows) + 1]] <- c(i - 1, xs[j], if (hit[j]) 2 else 1, if (hit[j]) 1 else 0)
  left[i] <- if (any(!hit)) max(xs[!hit]) else NA
  right[i] <- if (any(hit)) min(xs[hit]) else NA
}
fit <- survreg(Surv(left, right, type = "interval2") ~ 1, dist = "lognormal", control = survreg.control(rel.tolerance = 1e-14, maxiter = 200))
cat("  \"oneLayer\": {\n      \"depth\": 6, \"units\": ", n, ",\n      \"readings\": ", json_rows(do.call(rbind, rows)), ",\n", sep = "")
cat("      \"logLife\": ", num(unname(fit$coefficients)), ", \"scale\": ", num(fit$scale), ", \"logLikelihood\": ", num(fit$loglik[1]), "\n  }\n}\n", sep = "")
