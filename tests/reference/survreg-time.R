# How long does R's survreg take on twenty thousand points known by colours alone? Compare tests/bench/wear.ts.
#   Rscript tests/reference/survreg-time.R
suppressPackageStartupMessages(library(survival))
set.seed(1)
n <- 20000
u <- rnorm(n, log(1e-3), 0.3)
life <- 6 / exp(u)
looks <- 180 * (1:50)
left <- pmin(floor(life / 180) * 180, 9000)
right <- ifelse(life > 9000, NA, left + 180)
left[left == 0] <- NA
print(system.time(fit <- survreg(Surv(left, right, type = "interval2") ~ 1, dist = "lognormal")))
cat("mean of ln life", fit$coefficients, "spread", fit$scale, "\n")
