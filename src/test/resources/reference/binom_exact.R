# Makes binom_exact.csv: exact intervals of a share by R's binom.test. Run: Rscript binom_exact.R (R 4.2.2, base only).
rows <- do.call(rbind, lapply(c(1, 3, 8, 12, 13, 40, 400), function(n)
  do.call(rbind, lapply(unique(c(0, 1, n %/% 3, n - 1, n)), function(x)
    do.call(rbind, lapply(c(0.5, 0.9, 0.95, 0.99), function(level) {
      ci <- binom.test(x, n, conf.level = level)$conf.int
      data.frame(hits = x, trials = n, confidence = level, low = ci[1], high = ci[2])
    }))))))
writeLines(c("# Title: exact (Clopper-Pearson) intervals of a share",
             "# Source: made up for these tests; computed with R 4.2.2 (binom.test) by binom_exact.R beside this file."),
           "binom_exact.csv")
suppressWarnings(write.table(format(rows, digits = 15, trim = TRUE), "binom_exact.csv", append = TRUE, sep = ",",
                             row.names = FALSE, quote = FALSE))
