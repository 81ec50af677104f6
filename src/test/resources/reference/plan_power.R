# Power of the paired t test, and the limit of a planned variance. Run from this folder:
#   Rscript plan_power.R
# Writes plan_power.csv and plan_limit.csv. Base R only (stats).
head <- function(title) c(
  paste("# Title:", title),
  "# Source: computed by plan_power.R.",
  paste0("# How known: computed with R ", getRversion(), ", package stats."))
write <- function(file, lines, table) {
  con <- file(file, "w")
  writeLines(lines, con)
  write.csv(format(table, digits = 13, trim = TRUE), con, row.names = FALSE, quote = FALSE)
  close(con)
}

cases <- expand.grid(units = c(3, 5, 8, 16, 40), delta_db = c(0.5, 1), sd_db = c(0.3, 0.6, 1.5))
cases$power <- mapply(function(n, d, s)
  power.t.test(n = n, delta = d, sd = s, sig.level = 0.05, type = "paired", tol = 1e-12)$power,
  cases$units, cases$delta_db, cases$sd_db)
cases$units_for_90 <- mapply(function(d, s) {
  n <- 3
  while (power.t.test(n = n, delta = d, sd = s, sig.level = 0.05, type = "paired")$power < 0.9) n <- n + 1
  n
}, cases$delta_db, cases$sd_db)
write("plan_power.csv", c(head("power of the two-sided paired t test at 5 %; units_for_90: the fewest units, 3 or more, with power 0.9"),
  "# Units: sd_db is the standard deviation of the differences within pairs. power.t.test(type = paired)."), cases)

# A zone of one band under the plain offset: variance v of left-out errors from n0 units, seating variances a and b on
# nu degrees of freedom each, m0 seatings. Expected mean square of a design and its 95 % limit, written down anew.
set <- data.frame(n0 = c(8, 8, 8, 12, 5), v = c(1.2, 1.2, 0.8, 2.5, 0.4), a = c(0.3, 0.3, 0.5, 0.1, 0.2),
  b = c(0.4, 0.4, 0.9, 0.2, 0.1), m0 = c(2, 2, 2, 3, 2), n = c(8, 20, 30, 12, 40),
  m_a = c(2, 4, 2, 2, 10), m_b = c(2, 8, 10, 3, 2))
set$nu <- set$n0 * (set$m0 - 1)
chance <- 0.95
limit <- with(set, {
  grow <- function(k) k / (k - 1)
  rest <- pmax(0, v / grow(n0) - a / m0 - b / m0)
  e <- grow(n) * (rest + a / m_a + b / m_b)
  above <- function(df) ifelse(df > 0, qchisq(chance, pmax(df, 1)) / pmax(df, 1) - 1, 0)
  g <- (n0 - 1) / qchisq(1 - chance, n0 - 1) - 1
  w <- grow(n) * v / grow(n0)
  added <- (n - n0) / (n - 1)
  renewed <- 1 - pmin(1, e / w)^2
  part <- function(s, m) {
    change <- grow(n) * s * (1 / m - 1 / m0)
    change * (nu / qchisq(ifelse(change > 0, 1 - chance, chance), nu) - 1)
  }
  t <- qt(0.975, n - 1)
  data.frame(half_db = t * sqrt(e),
    upper_half_db = t * sqrt(e + sqrt((added * e * above(n - n0))^2 +
      ((1 - added) * e * above(n0 - 1))^2 * renewed + ((added + (1 - added) * renewed) * w * g)^2 +
      part(a, m_a)^2 + part(b, m_b)^2)),
    never_below_db = qnorm(0.975) * sqrt(rest))
})
out <- cbind(set, limit)
write("plan_limit.csv", c(head("expected half-width of a study gone on with to a planned size and its 95 % limit, for one band under the plain offset"),
  "# Units: v, a, b in dB squared; half-widths in dB at 95 %."), out)
