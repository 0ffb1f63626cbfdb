## scale.rs

the-sample-was-dyed-at-the-lot = The sample was dyed at { $a }, the lot at { $b }. { $what }
the-lot-takes-baths-where-the-sample = The lot takes { $count } baths where the sample took { $count2 }: every bath is a chance to differ.
the-lot-is-times-the-sample = The lot is { $times } times the sample; a trial lot in between is usual, for movement and heat don't scale.
heating-from-to-with-kw-takes-about-2 = Heating { $shown } from { $from } to { $to } with { $kw } kW takes about { $minutes } min; the sample's programme has { $planned } min. A slower rise dyes more evenly and somewhat longer: start with warmer water, or test a sample at the lot's rate.
