## settings.rs

metric = metric
us-customary = US customary
measures-sums-as-days-as-times = { $measures } measures, sums as { $chosen }, days as { $chosen2 }, times as { $chosen3 }
