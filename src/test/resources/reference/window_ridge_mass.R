# The window ridge with lm.ridge of the R package MASS (Venables and Ripley). Run from this folder:
#   Rscript window_ridge_mass.R
# Writes window_ridge_mass_units.csv and window_ridge_mass.csv. Base R and MASS only.
#
# lm.ridge divides every column by its root mean square before it adds lambda to the squared singular values: in
# the columns as given its penalty is lambda * sum(scale_c^2 * beta_c^2). Ours is lambda * sum(beta_c^2). A rotation
# of the columns, W Q with Q orthogonal, changes neither fit nor penalty of ours (beta = Q gamma, |beta| = |gamma|),
# and there is always a Q that makes all columns of W Q equally long (Schur 1923, Horn 1954; made here by plane
# rotations after Bendel and Mickey 1978, Commun. Stat. B 7:163). All scales of lm.ridge are then one number, and
# lambda / scale^2 is the penalty to hand over. A predictor outside the grid (a column of zeros, which lm.ridge
# alone could not divide by its length) needs no special case.
#
# Stacked rows: each band is centred about its own means of the units that take part, and lm.ridge is called without
# an intercept. Leaving a unit out is done literally: all its rows go, the means, the rotation and the coefficients
# are made anew from the others, and the penalty lambda = kappa * s is kept from all units.
suppressPackageStartupMessages(library(MASS))
RNGversion("4.0.0")
set.seed(20)

units <- 24
bands <- 16
walk <- function() {
  rows <- t(replicate(units, as.numeric(stats::filter(rnorm(bands + 20), 0.8, "recursive"))[21:(bands + 20)]))
  round(rows, 2)
}
x <- 2 * walk()
follow <- cbind(x[, -1], 0)
d <- round(0.4 * follow - 0.3 * x + 0.5 * walk() + 1, 2)
table <- data.frame(seq_len(units), x, d)
names(table) <- c("unit", paste0("x", seq_len(bands)), paste0("d", seq_len(bands)))

write_table <- function(name, head, rows) {
  out <- file(name, "wb")
  writeLines(c(paste("#", head), paste(names(rows), collapse = ","), do.call(paste, c(rows, sep = ","))), out)
  close(out)
}
write_table("window_ridge_mass_units.csv", c(
  sprintf("Title: %d units x %d bands: level on the old fixture (x) and difference (d), for the window ridge",
          units, bands),
  "Source: made up by window_ridge_mass.R (seeded normal numbers, neighbouring bands alike, rounded to 0.01 dB).",
  "How known: data made up; results in window_ridge_mass.csv.",
  "Units: dB. Bands are neighbours; the step of window and borrowing is one band."), format(table, trim = TRUE))

# Plane rotations that give all columns of w the same length, one column after the other.
equal_lengths <- function(w) {
  p <- ncol(w)
  q <- diag(p)
  a <- crossprod(w)
  mean_square <- sum(diag(a)) / p
  for (k in seq_len(p - 1)) {
    rest <- k:p
    low <- rest[which.min(diag(a)[rest])]
    high <- rest[which.max(diag(a)[rest])]
    if (diag(a)[high] - diag(a)[low] > 1e-13 * mean_square) {
      # tan t with a_hh c^2 - 2 a_hl c s + a_ll s^2 = mean square
      hh <- a[high, high] - mean_square
      ll <- a[low, low] - mean_square
      t <- (a[high, low] + sqrt(a[high, low]^2 - hh * ll)) / ll
      turn <- diag(p)
      turn[c(high, low), c(high, low)] <- matrix(c(1, -t, t, 1), 2) / sqrt(1 + t^2)
      q <- q %*% turn
      a <- crossprod(w %*% q)
      # Column "high" is done: put it where the loop has left it behind.
      swap <- seq_len(p)
      swap[c(k, high)] <- c(high, k)
      q <- q[, swap, drop = FALSE]
      a <- a[swap, swap, drop = FALSE]
    }
  }
  q
}

# Stacked rows at band b of the units kept, each band about its own means; the band itself first.
stack_rows <- function(x, d, b, h, borrow, kept) {
  lenders <- c(b, setdiff(intersect((b - borrow):(b + borrow), seq_len(ncol(x))), b))
  w <- NULL
  y <- NULL
  for (l in lenders) {
    window <- matrix(0, length(kept), 2 * h + 1)
    inside <- (l + (-h:h)) %in% seq_len(ncol(x))
    window[, inside] <- scale(x[kept, (l + (-h:h))[inside], drop = FALSE], scale = FALSE)
    w <- rbind(w, window)
    y <- c(y, d[kept, l] - mean(d[kept, l]))
  }
  list(w = w, y = y)
}

coefficients_with <- function(stacked, lambda) {
  q <- equal_lengths(stacked$w)
  turned <- stacked$w %*% q
  scales <- sqrt(colMeans(turned^2))
  stopifnot(max(scales) / min(scales) - 1 < 1e-11)
  fit <- lm.ridge(stacked$y ~ turned - 1, lambda = lambda / mean(scales)^2)
  drop(q %*% coef(fit))
}

error_without <- function(x, d, b, h, borrow, lambda, unit) {
  kept <- setdiff(seq_len(nrow(x)), unit)
  beta <- coefficients_with(stack_rows(x, d, b, h, borrow, kept), lambda)
  inside <- (b + (-h:h)) %in% seq_len(ncol(x))
  bands <- (b + (-h:h))[inside]
  predicted <- mean(d[kept, b]) + sum(beta[inside] * (x[unit, bands] - colMeans(x[kept, bands, drop = FALSE])))
  d[unit, b] - predicted
}

list_of <- function(numbers) paste(sprintf("%.15g", numbers), collapse = ";")

one_case <- function(n, b, h, borrow, kappa) {
  x <- x[seq_len(n), , drop = FALSE]
  d <- d[seq_len(n), , drop = FALSE]
  stacked <- stack_rows(x, d, b, h, borrow, seq_len(n))
  lambda <- kappa * sum(stacked$w^2) / (2 * h + 1)
  errors <- sapply(seq_len(n), function(i) error_without(x, d, b, h, borrow, lambda, i))
  data.frame(units = n, band = b, half_width = h, borrow = borrow, kappa = kappa,
             lambda = sprintf("%.15g", lambda), beta = list_of(coefficients_with(stacked, lambda)),
             loo_residuals = list_of(errors))
}

# Few and many units, the middle and the ends of the grid, one predictor to thirteen, more predictors than rows.
cases <- rbind(
  expand.grid(n = c(8, 24), b = c(1, 8, 16), shape = 1:6, kappa = c(0.01, 0.3, 3)),
  expand.grid(n = 7, b = 9, shape = 1:6, kappa = 0.03))
shapes <- cbind(h = c(0, 0, 1, 4, 6, 6), borrow = c(0, 2, 1, 0, 0, 2))
results <- do.call(rbind, lapply(seq_len(nrow(cases)), function(k) with(cases[k, ],
  one_case(n, b, shapes[shape, "h"], shapes[shape, "borrow"], kappa))))
write_table("window_ridge_mass.csv", c(
  "Title: window ridge on window_ridge_mass_units.csv: coefficients and leave-one-unit-out residuals",
  paste("Source: R package MASS", packageVersion("MASS"), "lm.ridge, called by window_ridge_mass.R beside this",
        "file; rows of the bands b-J..b+J stacked with their own means, penalty lambda = kappa x s kept from all units."),
  sprintf("How known: computed with R %s by window_ridge_mass.R; refits without each unit, no closed form.",
          getRversion()),
  paste("Units: dB; lambda in dB squared. units: the first so many of the table. beta: from -h to +h;",
        "loo_residuals: unit 1 onwards, at band b.")), results)
