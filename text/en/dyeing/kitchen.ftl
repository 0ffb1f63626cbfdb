## kitchen.rs

under-1-8-weigh = under 1/8 { $one }: weigh it
it-may-hold-millilitres2-to-millilitres3 = it may hold { $millilitres } ({ $millilitres2 } to { $millilitres3 } %)
it-may-weigh-to-grams2 = it may weigh { $high } ({ $grams } to { $grams2 } %)
us-fl-oz = US fl oz
