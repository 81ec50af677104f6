# Level shift between two fixtures: random effects over units, and where a new unit's shift falls.
# Run from this folder:
#   Rscript level_shift.R
# Reads level_shift_levels.csv, writes level_shift.csv. R with metafor.
suppressPackageStartupMessages(library(metafor))
levels <- read.csv("level_shift_levels.csv", comment.char = "#")
of_kind <- function(d) {
  cell <- function(fixture, f) tapply(d$level_db[d$fixture == fixture], d$unit[d$fixture == fixture], f)
  n <- list(from = cell("plate", length), to = cell("head", length))
  mean_db <- list(from = cell("plate", mean), to = cell("head", mean))
  pooled <- lapply(c(from = "plate", to = "head"), function(g) {
    s <- d[d$fixture == g, ]
    # residual variance of a one-way analysis of variance is the pooled variance between seatings
    summary(lm(level_db ~ unit, s))$sigma^2
  })
  shift <- mean_db$to - mean_db$from
  v <- pooled$from / n$from + pooled$to / n$to
  r <- rma(as.numeric(shift), as.numeric(v), method = "REML", test = "knha",
    control = list(threshold = 1e-15, maxiter = 1000))
  t <- qt(0.975, length(shift) - 1)
  total <- r$tau2 + mean(v) + r$se^2
  harmonic <- length(n$from) / sum(1 / n$from)
  data.frame(shift_db = as.numeric(r$beta), ci_low_db = r$ci.lb, ci_high_db = r$ci.ub,
    prediction_half_db = t * sqrt(total),
    variance_one_seating = total + pooled$from * max(0, 1 - 1 / harmonic))
}
kinds <- unique(levels$kind)
rows <- do.call(rbind, lapply(kinds, function(k) cbind(kind = k, of_kind(levels[levels$kind == k, ]))))
rows[-1] <- format(rows[-1], digits = 13, trim = TRUE)
con <- file("level_shift.csv", "w")
writeLines(c(
  "# Title: level shift between two fixtures, by kind",
  "# Source: computed by level_shift.R.",
  paste0("# How known: computed with metafor ", packageVersion("metafor"), " (R ", getRversion(), "): rma(method REML, test knha, threshold 1e-15)."),
  "# Units: dB, dB squared. prediction_half = t(0.975; n-1) sqrt(tau2 + mean v + se^2)."), con)
write.csv(rows, con, row.names = FALSE, quote = FALSE)
close(con)
