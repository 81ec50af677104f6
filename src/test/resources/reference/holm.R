# Holm-adjusted p values; R 4.2.2: Rscript holm.R > holm.csv
set.seed(20261125)
cat("# p.adjust(p, method = \"holm\"), base R; columns: case, p, adjusted\n")
cat("case,p,adjusted\n")
cases <- list(c(0.01, 0.04, 0.03, 0.005, 0.2, 0.04), c(0.5), c(0, 1, 1, 0.2), runif(12)^3, rep(0.02, 4))
for (k in seq_along(cases)) {
  p <- cases[[k]]
  a <- p.adjust(p, method = "holm")
  for (i in seq_along(p)) cat(sprintf("%d,%.17g,%.17g\n", k, p[i], a[i]))
}
