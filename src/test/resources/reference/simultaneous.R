# Half-widths that hold at all bands at once: Bonferroni's quantile of t on each band's own degrees of freedom,
# times the root of the mean of the squared standard errors over the bands within 1/6 octave.
# Run from this folder:
#   Rscript simultaneous.R
# Writes simultaneous.csv. Base R only.
set.seed(20261130)
bands <- 14
units <- c(8, 8, 8, 7, 8, 2, 8, 8, 6, 8, 0, 8, 5, 8)
d <- lapply(units, function(n) round(rnorm(n, 0, 1.5)^3 / 3, 2))
has <- units >= 3
se <- sapply(d, function(v) if (length(v) >= 3) sd(v) / sqrt(length(v)) else NA)
half <- rep(NA, bands)
for (b in which(has)) {
  near <- which(has & abs(seq_len(bands) - b) <= 2)
  half[b] <- qt(1 - 0.05 / (2 * sum(has)), units[b] - 1) * sqrt(mean(se[near]^2))
}
out <- file("simultaneous.csv", "w")
writeLines(c(
  "# Title: half-widths of a mean curve that hold at all bands at once, 95 %, twelve bands to the octave",
  "# Source: computed by simultaneous.R.",
  paste0("# How known: computed with R ", getRversion(), " (qt, sd); differences made up, skewed."),
  "# Units: dB. d: one difference per unit; bands with fewer than three have no mean.",
  "d,half_db"), out)
for (b in seq_len(bands)) writeLines(paste0(paste(d[[b]], collapse = " "), ",",
  if (is.na(half[b])) "" else formatC(half[b], digits = 14, format = "g")), out)
close(out)
