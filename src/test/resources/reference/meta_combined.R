# Random effects over studies with the standard error after Knapp and Hartung that is never below the model's own.
# Run from this folder:
#   Rscript meta_combined.R
# Writes meta_combined.csv. R with metafor.
suppressPackageStartupMessages(library(metafor))
sets <- list(
  two_close = list(d = c(1.30, 1.35), se = c(0.30, 0.25)),
  two_apart = list(d = c(0.40, 2.10), se = c(0.30, 0.25)),
  three = list(d = c(1.0, 1.6, 0.7), se = c(0.2, 0.3, 0.25)),
  four_alike = list(d = c(0.50, 0.52, 0.49, 0.55), se = c(0.20, 0.15, 0.30, 0.25)),
  six = list(d = c(-2.1, -1.2, -3.0, -1.9, -2.6, -0.8), se = c(0.4, 0.35, 0.5, 0.2, 0.3, 0.45)))
rows <- do.call(rbind, lapply(names(sets), function(name) {
  s <- sets[[name]]
  r <- rma(s$d, sei = s$se, method = "REML", test = "adhoc", control = list(threshold = 1e-15, maxiter = 1000))
  t <- qt(0.975, length(s$d) - 1)
  data.frame(case = name, d = paste(s$d, collapse = " "), se_d = paste(s$se, collapse = " "),
    mean = as.numeric(r$beta), se = r$se, tau2 = r$tau2, half = t * r$se, further_half = t * sqrt(r$tau2 + r$se^2))
}))
con <- file("meta_combined.csv", "w")
writeLines(c(
  "# Title: random-effects mean over studies, Knapp-Hartung standard error never below the model's own",
  "# Source: computed by meta_combined.R.",
  paste0("# How known: computed with metafor ", packageVersion("metafor"), " (R ", getRversion(), "): rma(method REML, test adhoc, threshold 1e-15)."),
  "# Units: dB. half = t(0.975; k-1) se; further_half = t(0.975; k-1) sqrt(tau2 + se^2)."), con)
write.csv(format(rows, digits = 13, trim = TRUE), con, row.names = FALSE, quote = FALSE)
close(con)
