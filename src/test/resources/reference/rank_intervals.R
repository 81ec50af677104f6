# Makes rank_intervals.csv: Spearman's and Kendall's coefficients by R's cor.test, with intervals by Fisher's z
# (variances (1 + r^2/2)/(n - 3) after Bonett and Wright 2000, 0.437/(n - 4) after Fieller, Hartley and Pearson 1957).
# Run: Rscript rank_intervals.R (R 4.2.2, base only), beside the two tables it reads.
one <- function(file, a, b) {
  d <- read.csv(file, comment.char = "#")
  x <- d[[a]]; y <- d[[b]]; n <- length(x)
  row <- function(measure, r, v) {
    half <- qnorm(0.975) * sqrt(v)
    data.frame(table = file, measure = measure, n = n, r = r, low = tanh(atanh(r) - half), high = tanh(atanh(r) + half))
  }
  rho <- unname(suppressWarnings(cor.test(x, y, method = "spearman"))$estimate)
  tau <- unname(suppressWarnings(cor.test(x, y, method = "kendall"))$estimate)
  rbind(row("SPEARMAN", rho, (1 + rho^2 / 2) / (n - 3)), row("KENDALL", tau, 0.437 / (n - 4)))
}
rows <- rbind(one("rank_correlation_ties.csv", "deviation_a_db", "deviation_b_db"),
              one("rank_correlation_tuna.csv", "lightness", "panel_score"))
writeLines(c("# Title: Spearman's rho and Kendall's tau-b with 95 % intervals",
             "# Source: computed with R 4.2.2 (cor.test, qnorm) by rank_intervals.R beside this file."),
           "rank_intervals.csv")
suppressWarnings(write.table(format(rows, digits = 14, trim = TRUE), "rank_intervals.csv", append = TRUE, sep = ",",
                             row.names = FALSE, quote = FALSE))
