# Makes features_units.csv and features_results.csv: features that units share, worked out once more from the
# definition with R's own t.test and plain loops. Run: Rscript features.R (R 4.2.2, base only).
# 8 units, 12 bands per octave (base ten), one curve per unit: a peak near 8 kHz and a notch near 3 kHz on a slope,
# with scatter of place, height and level; no seatings are repeated.
set.seed(20260411)
per_octave <- 12
x <- -20:52
mid <- 1000 * 10^(0.3 * (2 * x + 1) / (2 * per_octave))
units <- 8
bump <- function(centre, width, height) height * exp(-0.5 * (log2(mid / centre) / width)^2)
d <- t(sapply(1:units, function(i)
  1.2 * log2(mid / 1000) * 0.3
  + bump(8000 * 2^rnorm(1, 0, 0.03), 0.10, 4 + rnorm(1, 0, 0.6))
  - bump(3000 * 2^rnorm(1, 0, 0.02), 0.09, 2 + rnorm(1, 0, 0.3))
  + rnorm(length(mid), 0, 0.15)))
d <- round(d, 4)

# The curve minus its mean over one octave, taken as constant within each band: by sampling the step function.
contrast <- function(curve) {
  sapply(seq_along(mid), function(b) {
    places <- b + seq(-per_octave / 2, per_octave / 2, length.out = 24001)
    places <- (places[-1] + places[-length(places)]) / 2     # midpoints of 24000 equal parts
    band <- floor(places + 0.5)
    if (min(band) < 1 || max(band) > length(mid)) NA else curve[b] - mean(curve[band])
  })
}
g <- t(apply(d, 1, contrast))
inside <- which(!is.na(g[1, ]))

h <- apply(g, 2, mean)
se <- apply(g, 2, sd) / sqrt(units)
low <- high <- rep(NA, length(mid))
for (b in inside) {
  ci <- t.test(g[, b])$conf.int
  low[b] <- ci[1]
  high[b] <- ci[2]
}

# At all bands at once: Bonferroni's quantile, squared standard errors averaged over the bands within 1/6 octave.
q <- qt(1 - 0.05 / (2 * length(inside)), units - 1)
half <- rep(NA, length(mid))
for (b in inside) half[b] <- q * sqrt(mean(se[inside[abs(inside - b) <= per_octave / 6]]^2))

feature <- function(b) {
  s <- sign(h[b])
  if (is.na(h[b]) || is.na(h[b - 1]) || is.na(h[b + 1])) return(NULL)
  if (!(s * h[b] > s * h[b - 1] && s * h[b] >= s * h[b + 1])) return(NULL)
  if (!(abs(h[b]) > half[b]) || mean(sign(g[, b]) == s) < 0.8) return(NULL)
  # shoulder of a greater one?
  for (step in c(-1, 1)) {
    k <- b + step
    while (!is.na(h[k]) && s * h[k] > abs(h[b]) / 2) {
      if (s * h[k] > abs(h[b])) return(NULL)
      k <- k + step
    }
  }
  # place: the parabola through three bands in (lg f, dB), by solving for it
  parabola <- solve(cbind(1, -1:1, (-1:1)^2), h[(b - 1):(b + 1)])
  place <- -parabola[2] / (2 * parabola[3])
  centre <- mid[b] * 10^(0.3 * place / per_octave)
  # width at half height on straight lines between bands, by approx on a fine grid
  fine <- seq(inside[1], inside[length(inside)], by = 1e-4)
  above <- s * approx(seq_along(h), h, fine)$y > abs(h[b]) / 2
  left <- max(fine[fine < b & !above])
  right <- min(fine[fine > b & !above])
  width <- (right - left) * log2(10^0.3) / per_octave
  data.frame(band = b - 1, shape = if (s > 0) "PEAK" else "NOTCH", centre_hz = centre, height_db = h[b],
             low_db = low[b], high_db = high[b], sim_half_db = half[b], width_octaves = width,
             sharing = sum(sign(g[, b]) == s))
}
found <- do.call(rbind, lapply(2:(length(mid) - 1), feature))

head_lines <- function(title) c(
  paste("# Title:", title),
  "# Source: made up for these tests; computed with R 4.2.2 by features.R beside this file.",
  "# Units: Hz, dB, octaves. Widths are good to 0.0001 octaves, all else to the digits shown.")
write_with <- function(title, table, file) {
  writeLines(head_lines(title), file)
  suppressWarnings(write.table(table, file, append = TRUE, sep = ",", row.names = FALSE, quote = FALSE))
}
write_with("differences of 8 units at 73 bands of 1/12 octave",
           data.frame(unit = 1:units, setNames(as.data.frame(d), sprintf("b%d", seq_along(mid) - 1))),
           "features_units.csv")
write_with(sprintf("features that 8 units share; multiplier %.12f over %d bands", q, length(inside)),
           format(found, digits = 12, trim = TRUE), "features_results.csv")
