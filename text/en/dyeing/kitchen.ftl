## kitchen.rs

under-1-8-weigh = under 1/8 { $one }: weigh it
it-may-hold-to-ml-to-millilitres2 = it may hold { $low } to { $high } ml ({ $millilitres } to { $millilitres2 } %)
it-may-weigh-to-g-to-grams2 = it may weigh { $low } to { $high } g ({ $grams } to { $grams2 } %)
