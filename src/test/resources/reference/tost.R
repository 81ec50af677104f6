# Makes tost_t.csv: both one-sided p values and the 90 % interval for given mean, standard error, degrees of freedom
# and limit, by R's pt and qt. Run: Rscript tost.R (R 4.2.2, base only).
rows <- expand.grid(mean_db = c(-0.45, -0.1, 0, 0.2, 0.8), se_db = c(0.02, 0.15, 0.6), df = c(2, 11, 39),
                    limit_db = c(0.5, 1.0))
rows$p_below <- pt((rows$mean_db + rows$limit_db) / rows$se_db, rows$df, lower.tail = FALSE)
rows$p_above <- pt((rows$limit_db - rows$mean_db) / rows$se_db, rows$df, lower.tail = FALSE)
rows$half_90_db <- qt(0.95, rows$df) * rows$se_db
writeLines(c("# Title: two one-sided t tests from mean, standard error and degrees of freedom",
             "# Source: made up for these tests; computed with R 4.2.2 (pt, qt) by tost.R beside this file.",
             "# Units: dB."), "tost_t.csv")
suppressWarnings(write.table(format(rows, digits = 15, trim = TRUE), "tost_t.csv", append = TRUE, sep = ",",
                             row.names = FALSE, quote = FALSE))
